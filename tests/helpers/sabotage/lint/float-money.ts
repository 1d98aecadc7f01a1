/** Turns cents into floats and loses one of them. */
export function halfOf(price: string): string {
  return (parseFloat(price) / 2).toFixed(2);
}
