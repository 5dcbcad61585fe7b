import QRCode from 'qrcode'

/**
 * A QR code as SVG: one path of dark modules on nothing, with the quiet zone of four modules left to the page.
 *
 * Range: up to some 2,300 characters at level M. Errors: throws beyond, since our links are far shorter.
 * Source: ISO/IEC 18004, level M (15 % may be damaged: wet paper).
 */
export function qrSvg(text: string): string {
  const { modules } = QRCode.create(text, { errorCorrectionLevel: 'M' })
  let path = ''
  for (let row = 0; row < modules.size; row += 1) {
    for (let column = 0; column < modules.size; column += 1) {
      if (modules.get(row, column)) path += `M${column} ${row}h1v1h-1z`
    }
  }
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${modules.size} ${modules.size}" shape-rendering="crispEdges"><path d="${path}" fill="#14211d"/></svg>`
}
