/**
 * Where the program itself runs, as seen from this page.
 *
 * @param hostname  of the page's address
 */
export function hostWords(hostname: string): 'on this computer' | 'in the office' {
  const isHere = hostname === 'localhost' || hostname === '[::1]' || hostname.startsWith('127.');
  return isHere ? 'on this computer' : 'in the office';
}
