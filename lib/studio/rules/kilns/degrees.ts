/** A scale that temperatures are read in. */
export type Scale = 'C' | 'F';

/**
 * A temperature in whole degrees Fahrenheit.
 *
 * @param celsius °C, whole or not
 * @returns the nearest whole degree
 * @example fahrenheitOf(998) // 1828
 */
export function fahrenheitOf(celsius: number): number {
  return Math.round((celsius * 9) / 5 + 32);
}

/**
 * A temperature in whole degrees Celsius.
 *
 * @param fahrenheit °F, whole or not
 * @returns the nearest whole degree
 * @example celsiusOf(200) // 93
 */
export function celsiusOf(fahrenheit: number): number {
  return Math.round(((fahrenheit - 32) * 5) / 9);
}

/**
 * A climb in °F an hour. A climb has no freezing point: nothing is added.
 *
 * @param celsiusPerHour °C an hour, below zero for cooling
 * @returns the nearest whole degree an hour
 * @example climbInFahrenheit(60) // 108, and not 140
 */
export function climbInFahrenheit(celsiusPerHour: number): number {
  return Math.round((celsiusPerHour * 9) / 5);
}

/**
 * A climb in °C an hour: the other way round from {@link climbInFahrenheit}.
 *
 * @example climbInCelsius(270) // 150
 */
export function climbInCelsius(fahrenheitPerHour: number): number {
  return Math.round((fahrenheitPerHour * 5) / 9);
}

/** A temperature as it is read: `1,222 °C`, `2,232 °F`. */
export function degreesWords(celsius: number, scale: Scale): string {
  const degrees = scale === 'F' ? fahrenheitOf(celsius) : Math.round(celsius);
  return `${String(degrees).replace(/\B(?=(?:\d{3})+$)/g, ',')} °${scale}`;
}
