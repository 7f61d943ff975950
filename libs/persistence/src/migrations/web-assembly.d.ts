/** What we use of WebAssembly; the types of Node 20 do not name it. */
declare namespace WebAssembly {
  interface Instance {
    readonly exports: Record<string, unknown> & { readonly __wbindgen_start?: () => void };
  }
  function instantiate(
    bytes: Uint8Array,
    imports: Record<string, unknown>,
  ): Promise<{ readonly instance: Instance }>;
}
