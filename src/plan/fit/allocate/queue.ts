/** Things of which always the first is taken out, whatever order they came in: a binary heap. */
export class Queue<T> {
  private readonly things: T[] = [];
  private readonly comesFirst: (a: T, b: T) => boolean;

  constructor(comesFirst: (a: T, b: T) => boolean) {
    this.comesFirst = comesFirst;
  }

  add(thing: T): void {
    let at = this.things.push(thing) - 1;
    while (at > 0) {
      const above = (at - 1) >> 1;
      if (!this.isBefore(at, above)) return;
      this.swap(at, above);
      at = above;
    }
  }

  next(): T | undefined {
    const last = this.things.length - 1;
    this.swap(0, last);
    const first = this.things.pop();
    for (let at = 0; ; ) {
      const below = this.isBefore(2 * at + 2, 2 * at + 1) ? 2 * at + 2 : 2 * at + 1;
      if (!this.isBefore(below, at)) return first;
      this.swap(at, below);
      at = below;
    }
  }

  private isBefore(a: number, b: number): boolean {
    const [first, second] = [this.things[a], this.things[b]];
    return first !== undefined && second !== undefined && this.comesFirst(first, second);
  }

  private swap(a: number, b: number): void {
    const [first, second] = [this.things[a], this.things[b]];
    if (first === undefined || second === undefined) return;
    this.things[a] = second;
    this.things[b] = first;
  }
}
