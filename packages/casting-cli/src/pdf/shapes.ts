import { type Arc, arcTurn, latin, type Shape, type Step, type Style, textWidth } from "casting-core";
import type PDFDocument from "pdfkit";

const INKS = { black: "#000000", grey: "#777777", pale: "#cccccc", white: "#ffffff" };

/** Draws a shape of a sheet; the document's unit is the millimetre, its lines black and whole unless a shape's are not. */
export function drawShape(pdf: PDFDocument, shape: Shape): void {
  switch (shape.kind) {
    case "polyline":
    case "polygon":
      styled(pdf, shape.style, () => {
        polyline(pdf, shape.points);
        if (shape.kind === "polygon") pdf.closePath();
      });
      break;
    case "circle":
      styled(pdf, shape.style, () => pdf.circle(shape.centre[0], shape.centre[1], shape.radius));
      break;
    case "path":
      styled(pdf, shape.style, () => outline(pdf, shape.steps));
      break;
    case "text":
      write(pdf, shape);
  }
}

function polyline(pdf: PDFDocument, points: readonly (readonly [number, number])[]): void {
  pdf.moveTo(points[0]![0], points[0]![1]);
  for (let n = 1; n < points.length; n++) pdf.lineTo(points[n]![0], points[n]![1]);
}

/** Draws a path: between its points and its painting a page may say nothing else, so its style comes first. */
function styled(pdf: PDFDocument, { line, dash, ink = "black", fill }: Style, path: () => void): void {
  const special = dash !== undefined || ink !== "black";
  if (special) pdf.save();
  if (line > 0) pdf.lineWidth(line);
  if (ink !== "black") pdf.strokeColor(INKS[ink]);
  if (dash) pdf.dash([...dash]);
  if (fill) pdf.fillColor(INKS[fill]);
  path();
  if (fill && line > 0) pdf.fillAndStroke();
  else if (fill) pdf.fill();
  else pdf.stroke();
  if (special) pdf.restore();
}

/** A line of text by its base line, in the letters that the standard fonts know. */
function write(pdf: PDFDocument, { at: [x, y], text, size, align }: Extract<Shape, { kind: "text" }>): void {
  const words = latin(text);
  const back = align === "start" ? 0 : textWidth(words, size) / (align === "middle" ? 2 : 1);
  pdf.save();
  pdf.translate(x, y);
  pdf.font("Helvetica").fontSize(size).fillColor("#000000");
  pdf.text(words, -back, 0);
  pdf.restore();
}

/** Lines and arcs; an arc as cubic curves of at most an eighth of a turn, off by less than 5e-6 of its radius. */
function outline(pdf: PDFDocument, steps: readonly Step[]): void {
  let [fromX, fromY] = steps[0]!.to;
  pdf.moveTo(fromX, fromY);
  for (const { to, arc } of steps.slice(1)) {
    if (arc) arcTo(pdf, [fromX, fromY], to, arc);
    else pdf.lineTo(to[0], to[1]);
    [fromX, fromY] = to;
  }
  pdf.closePath();
}

function arcTo(pdf: PDFDocument, from: [number, number], to: [number, number], arc: Arc): void {
  const { radius } = arc;
  const { centre, start, sweep } = arcTurn(from, to, arc);
  const parts = Math.max(1, Math.ceil(Math.abs(sweep) / (Math.PI / 4)));
  const step = sweep / parts;
  const pull = (4 / 3) * Math.tan(step / 4) * radius;
  for (let n = 0; n < parts; n++) {
    const [a, b] = [start + n * step, start + (n + 1) * step];
    const p = (angle: number) => [centre[0] + radius * Math.cos(angle), centre[1] + radius * Math.sin(angle)] as const;
    const [p0, p1] = [p(a), p(b)];
    pdf.bezierCurveTo(
      p0[0] - pull * Math.sin(a),
      p0[1] + pull * Math.cos(a),
      p1[0] + pull * Math.sin(b),
      p1[1] - pull * Math.cos(b),
      p1[0],
      p1[1],
    );
  }
}
