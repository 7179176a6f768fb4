import type { default as PDFDocument, StandardFont } from "pdfkit";

/** A document to draw on, and its bytes once it has ended. */
export interface OpenDocument {
  pdf: PDFDocument;
  bytes: Promise<Uint8Array>;
}

/** An empty document; pdfkit is slow to load, so it is imported only now. */
export async function openDocument(title: string): Promise<OpenDocument> {
  const [{ default: Document, registerStdFonts }, { default: Helvetica }, { toBytes }] = await Promise.all([
    import("pdfkit"),
    import("pdfkit/standard-fonts/Helvetica"),
    import("pdfkit/output"),
  ]);
  registerStdFonts?.(Helvetica);
  // A file holds no time, but the format wants a date: always the same one.
  const pdf = new (lighter(Document))({
    autoFirstPage: false,
    compress: false,
    info: { Title: title, Producer: "casting", Creator: "casting", CreationDate: new Date(0) },
  });
  pdf._root.data["ViewerPreferences"] = pdf.ref({ PrintScaling: "None" });
  return { pdf, bytes: toBytes(pdf) };
}

/** The library's document without what no sheet needs of it, and costs most of the time. */
function lighter(Document: typeof PDFDocument): typeof PDFDocument {
  return class extends Document {
    /** It makes an array of bytes of every line of content: thousands of small ones. This hands over a page's at once. */
    #lines: string[] = [];
    /** What shows a text, by the text. */
    readonly #shown = new Map<string, string>();

    override addContent(line: string): this {
      this.#lines.push(line);
      return this;
    }

    override addPage(options: Record<string, unknown>): this {
      this.#finishPage();
      return super.addPage(options);
    }

    /**
     * A line of text by its base line, as the library writes it. That measures it twice, to break or align it and to go
     * on behind it, and looks up the letters of each once more, those of every page's foot among them.
     */
    override text(words: string, x: number, y: number): this {
      if (words === "") return this;
      const { page, _font: font } = this;
      page.fonts[font.id] ??= font.ref();
      let shown = this.#shown.get(words);
      if (shown === undefined) {
        shown = kerned(font, words);
        this.#shown.set(words, shown);
      }
      const place = `${number(x)} ${number(page.height - y)}`;
      return this.addContent(
        `q\n1 0 0 -1 0 ${number(page.height)} cm\nBT\n1 0 0 1 ${place} Tm\n/${font.id} ${number(this._fontSize)} Tf\n${shown} TJ\nET\nQ`,
      );
    }

    override end(): void {
      this.#finishPage();
      super.end();
    }

    #finishPage(): void {
      if (this.#lines.length > 0) super.addContent(Buffer.from(`${this.#lines.join("\n")}\n`, "latin1"));
      this.#lines = [];
    }
  };
}

/** The letters of a text, with what each is moved by that the next is to stand nearer to, or farther from. */
function kerned(font: StandardFont, words: string): string {
  const [codes, letters] = font.encode(words);
  const runs: string[] = [];
  let run = "";
  letters.forEach(({ xAdvance, advanceWidth }, n) => {
    run += codes[n];
    const kern = xAdvance - advanceWidth;
    if (kern === 0 && n < letters.length - 1) return;
    runs.push(`<${run}> ${number(-kern)}`);
    run = "";
  });
  return `[${runs.join(" ")}]`;
}

/** A number as the library writes it. */
function number(value: number): number {
  return Math.round(value * 1e6) / 1e6;
}
