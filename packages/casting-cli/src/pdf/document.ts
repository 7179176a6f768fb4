import type PDFDocument from "pdfkit";

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

    override addContent(line: string): this {
      this.#lines.push(line);
      return this;
    }

    override addPage(options: Record<string, unknown>): this {
      this.#finishPage();
      return super.addPage(options);
    }

    /** It measures each text twice, to break or align it and to go on behind it: these are whole lines at their places. */
    override widthOfString(): number {
      return 0;
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
