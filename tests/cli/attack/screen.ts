import { Terminal } from '@xterm/headless';

/** What a terminal makes of a text: the lines that a reader sees, and whatever else it did. */
export interface Screen {
  readonly lines: readonly string[];
  readonly obeyed: readonly string[];
}

/** As many lines as one call prints at the most. */
const SCROLLBACK = 20_000;

export async function shownOn(columns: number, text: string): Promise<Screen> {
  const terminal = new Terminal({
    cols: columns,
    rows: 24,
    scrollback: SCROLLBACK,
    allowProposedApi: true,
    convertEol: true,
  });
  const obeyed: string[] = [];
  terminal.onBell(() => obeyed.push('rang'));
  terminal.onTitleChange((title) => obeyed.push(`took the title ${title}`));
  terminal.onData((answer) => obeyed.push(`answered ${JSON.stringify(answer)}`));
  terminal.buffer.onBufferChange(() => obeyed.push('changed to another screen'));
  await new Promise<void>((resolve) => terminal.write(text, resolve));
  const lines = linesOf(terminal);
  terminal.dispose();
  return { lines, obeyed };
}

/** What the terminal broke for want of room is one line again. */
function linesOf({ buffer: { active } }: Terminal): readonly string[] {
  const lines: string[] = [];
  for (let row = 0; row < active.baseY + active.cursorY; row += 1) {
    const line = active.getLine(row);
    const isNext = active.getLine(row + 1)?.isWrapped === true;
    const shown = line?.translateToString(!isNext) ?? '';
    if (line?.isWrapped === true) lines.push(`${lines.pop() ?? ''}${shown}`);
    else lines.push(shown);
  }
  return lines;
}
