declare module "pdfkit" {
  /** Of the browser's build alone: Node's finds the standard fonts by itself. */
  export const registerStdFonts: ((font: unknown) => void) | undefined;
  /** One of the fonts that every reader has. */
  export interface StandardFont {
    id: string;
    ref(): unknown;
    /** The codes of a text's letters, and how far each one leads: by itself, and before the next. */
    encode(text: string): [string[], { advanceWidth: number; xAdvance: number }[]];
  }

  /** The part of the document that is used here. Lengths in points until scaled. */
  export default class PDFDocument {
    constructor(options: Record<string, unknown>);
    info: Record<string, unknown>;
    _font: StandardFont;
    _fontSize: number;
    page: { height: number; fonts: Record<string, unknown> };
    _root: { data: Record<string, unknown> };
    ref(data: Record<string, unknown>): { end(): void };
    addContent(content: string | Uint8Array): this;
    addPage(options: Record<string, unknown>): this;
    end(): void;
    save(): this;
    restore(): this;
    scale(x: number, y?: number): this;
    translate(x: number, y: number): this;
    rect(x: number, y: number, width: number, height: number): this;
    clip(): this;
    moveTo(x: number, y: number): this;
    lineTo(x: number, y: number): this;
    bezierCurveTo(ax: number, ay: number, bx: number, by: number, x: number, y: number): this;
    circle(x: number, y: number, radius: number): this;
    closePath(): this;
    lineWidth(width: number): this;
    lineJoin(kind: string): this;
    dash(length: number | readonly number[], options?: Record<string, unknown>): this;
    fillColor(colour: string): this;
    strokeColor(colour: string): this;
    fill(): this;
    stroke(): this;
    fillAndStroke(): this;
    font(name: string): this;
    fontSize(size: number): this;
    text(text: string, x: number, y: number): this;
  }
}

declare module "pdfkit/standard-fonts/Helvetica" {
  const font: unknown;
  export default font;
}

declare module "pdfkit/output" {
  import type PDFDocument from "pdfkit";
  /** All bytes of the document, once it has ended. */
  export function toBytes(document: PDFDocument): Promise<Uint8Array>;
}
