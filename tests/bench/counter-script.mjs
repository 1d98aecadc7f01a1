export function counterScript() {
  return { counterBytes: 0, emptyBytes: 0 };
}
