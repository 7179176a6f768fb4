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
    compiled ??= new host.WebAssembly.Module(Uint8Array.from(host.atob(code), (letter) => letter.charCodeAt(0)));
    return new host.WebAssembly.Instance(compiled).exports as T;
  };
}
