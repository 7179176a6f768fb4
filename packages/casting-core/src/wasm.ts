/** What the core needs of WebAssembly and of base 64: every browser and Node have both, the language's own types neither. */
interface Host {
  WebAssembly: {
    Module: new (code: Uint8Array) => object;
    Instance: new (module: object) => { exports: unknown };
  };
  atob(text: string): string;
}

/** What compiled code exports beside its functions: a number, or where an array begins in its memory. */
export interface Place {
  readonly value: number;
}

/** What every piece of compiled code has. */
export interface Compiled {
  readonly memory: { readonly buffer: ArrayBuffer };
}

/** Opens the compiled `code` (base 64) as often as it is called, each time with a memory of its own. */
export function opener<T extends Compiled>(code: string): () => T {
  const host = globalThis as unknown as Host;
  let compiled: object | undefined;
  return () => {
    compiled ??= new host.WebAssembly.Module(bytesOf(host.atob(code)));
    return new host.WebAssembly.Instance(compiled).exports as T;
  };
}

/** The bytes that the letters stand for: by a loop, since code that runs once is not made fast. */
function bytesOf(letters: string): Uint8Array {
  const bytes = new Uint8Array(letters.length);
  for (let n = 0; n < letters.length; n++) bytes[n] = letters.charCodeAt(n);
  return bytes;
}
