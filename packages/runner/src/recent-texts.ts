/** The texts used last, up to a total length; the longest unused go first. */
export class RecentTexts {
  readonly #texts = new Map<string, string>();
  readonly #longest: number;
  #length = 0;

  constructor(longest = 64 * 1024 * 1024) {
    this.#longest = longest;
  }

  read(key: string): string | null {
    const text = this.#texts.get(key);
    if (text === undefined) return null;
    this.#texts.delete(key);
    this.#texts.set(key, text);
    return text;
  }

  write(key: string, text: string): void {
    this.#drop(key);
    if (text.length > this.#longest) return;
    this.#texts.set(key, text);
    this.#length += text.length;
    for (const oldest of this.#texts.keys()) {
      if (this.#length <= this.#longest) break;
      this.#drop(oldest);
    }
  }

  #drop(key: string): void {
    this.#length -= this.#texts.get(key)?.length ?? 0;
    this.#texts.delete(key);
  }
}
