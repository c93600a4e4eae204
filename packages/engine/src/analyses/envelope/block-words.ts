/** A pack in words. */
export function blockWords(blocks: number): string {
  return blocks === 1 ? "1 block" : `${blocks} blocks`;
}
