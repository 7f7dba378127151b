import type { Span } from '#core/place.ts';

/** One cell. `span` covers it as written, quotes and outer spaces included; `text` is what it says. */
export interface CsvCell {
  readonly text: string;
  readonly span: Span;
  readonly quoted: boolean;
}

/** One row; `line` counts from 1 and is the first it stands on. The span leaves out the end of line. */
export interface CsvRow {
  readonly cells: readonly CsvCell[];
  readonly span: Span;
  readonly line: number;
}

/** Where to begin, and when to stop. */
export interface LexOptions {
  readonly delimiter: string;
  /** Offset of the first row. */
  readonly from: number;
  /** Line number of the first row. */
  readonly line: number;
  readonly mostRows?: number;
}

/** The rows of a text whose delimiter is known. Takes time in proportion to the text's length. */
export function lexRows(text: string, options: LexOptions): CsvRow[] {
  const lexer = new RowLexer(text, options);
  const rows: CsvRow[] = [];
  const most = options.mostRows ?? Number.POSITIVE_INFINITY;
  while (!lexer.isAtEnd() && rows.length < most) rows.push(lexer.row());
  return rows;
}

class RowLexer {
  private readonly text: string;
  private readonly delimiter: string;
  private at: number;
  private line: number;
  /**
   * How far closing quotes may still be looked for in vain, over the whole text. Each quote that is never closed could
   * cost a look through all the rest; a text that has used this up is not written with quotes.
   */
  private patience: number;

  constructor(text: string, { delimiter, from, line }: LexOptions) {
    this.text = text;
    this.delimiter = delimiter;
    this.at = from;
    this.line = line;
    this.patience = 8 * text.length + 1000;
  }

  isAtEnd(): boolean {
    return this.at >= this.text.length;
  }

  row(): CsvRow {
    const start = this.at;
    const line = this.line;
    const cells = [this.cell()];
    while (this.text[this.at] === this.delimiter) {
      this.at++;
      cells.push(this.cell());
    }
    const span = [start, this.at] as const;
    this.lineEnd();
    return { cells, span, line };
  }

  private cell(): CsvCell {
    const quote = this.openingQuote();
    return (quote === null ? null : this.quotedCell(quote)) ?? this.bareCell();
  }

  /** Offset of a quote with which the cell begins, spaces before it passed over. */
  private openingQuote(): number | null {
    let at = this.at;
    while (this.text[at] === ' ' || (this.text[at] === '\t' && this.delimiter !== '\t')) at++;
    return this.text[at] === '"' ? at : null;
  }

  /**
   * A cell in quotes; null where they turn out to be part of a bare cell. A lone quote inside is taken as meant on the
   * same line ("5" display"); on another line it is more likely the start of the next quoted cell, and the first
   * quote one that nobody closed: taking it as open would swallow rows.
   */
  private quotedCell(quote: number): CsvCell | null {
    const { text } = this;
    if (this.patience <= 0) return null;
    let hasLone = false;
    let lines = 0;
    for (let at = quote + 1; at < text.length; at++) {
      const char = text[at];
      if (char === '\n' || (char === '\r' && text[at + 1] !== '\n')) lines++;
      if (lines > 0 && hasLone) return this.gaveUp(quote, at);
      if (char !== '"') continue;
      if (text[at + 1] === '"') {
        at++;
        continue;
      }
      const end = this.endAfterQuote(at);
      if (end === null) {
        hasLone = true;
        continue;
      }
      const cell = {
        text: text.slice(quote + 1, at).replaceAll('""', '"'),
        span: [this.at, end],
        quoted: true,
      } as const;
      this.at = end;
      this.line += lines;
      return cell;
    }
    return this.gaveUp(quote, text.length);
  }

  private gaveUp(from: number, to: number): null {
    this.patience -= to - from;
    return null;
  }

  /** Where the cell ends if the quote at `at` closes it; null where more than spaces follow before its end. */
  private endAfterQuote(at: number): number | null {
    let end = at + 1;
    while (this.text[end] === ' ' && this.delimiter !== ' ') end++;
    return this.isCellEnd(end) ? end : null;
  }

  private bareCell(): CsvCell {
    const start = this.at;
    while (!this.isCellEnd(this.at)) this.at++;
    return { text: this.text.slice(start, this.at), span: [start, this.at], quoted: false };
  }

  private isCellEnd(at: number): boolean {
    const char = this.text[at];
    return char === undefined || char === this.delimiter || char === '\n' || char === '\r';
  }

  private lineEnd(): void {
    if (this.text[this.at] === '\r') this.at += this.text[this.at + 1] === '\n' ? 2 : 1;
    else if (this.text[this.at] === '\n') this.at++;
    this.line++;
  }
}
