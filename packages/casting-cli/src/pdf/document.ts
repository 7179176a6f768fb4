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
  const pdf = new (pageByPage(Document))({
    autoFirstPage: false,
    compress: false,
    info: { Title: title, Producer: "casting", Creator: "casting", CreationDate: new Date(0) },
  });
  pdf._root.data["ViewerPreferences"] = pdf.ref({ PrintScaling: "None" });
  return { pdf, bytes: toBytes(pdf) };
}

/** The library makes an array of bytes of every line of content: thousands of small ones. This hands over a page's at once. */
function pageByPage(Document: typeof PDFDocument): typeof PDFDocument {
  return class extends Document {
    #lines: string[] = [];

    override addContent(line: string): this {
      this.#lines.push(line);
      return this;
    }

    override addPage(options: Record<string, unknown>): this {
      this.#finishPage();
      return super.addPage(options);
    }

    override end(): void {
      this.#finishPage();
      super.end();
    }

    #finishPage(): void {
      if (this.#lines.length > 0) super.addContent(this.#lines.join("\n"));
      this.#lines = [];
    }
  };
}
