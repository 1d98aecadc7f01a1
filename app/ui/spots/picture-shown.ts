/** A picture to be shown: its address, what it shows in words, its size in pixels. */
export type PictureShown = Readonly<{ src: string; alt: string; width: number; height: number }>;
