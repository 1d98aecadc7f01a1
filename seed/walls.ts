import sharp from 'sharp';

/**
 * A plain drawing of a wall with the wished outline taped to it: what a collector would send with
 * the request. It holds no letters, so that it looks the same where no font is installed. JPEG.
 */
export async function drawWall(hue: number): Promise<Buffer> {
  const svg = `
<svg xmlns="http://www.w3.org/2000/svg" width="1200" height="900" viewBox="0 0 1200 900">
  <rect width="1200" height="900" fill="hsl(${hue} 14% 84%)"/>
  <rect y="690" width="1200" height="210" fill="hsl(${hue + 8} 20% 52%)"/>
  <rect y="676" width="1200" height="14" fill="hsl(${hue} 12% 93%)"/>
  <polygon points="0,0 250,0 430,690 0,690" fill="hsl(50 60% 96%)" opacity=".35"/>
  <g fill="none" stroke="hsl(${hue} 14% 34%)" stroke-width="3" stroke-dasharray="14 9">
    <rect x="330" y="190" width="600" height="270"/>
  </g>
  <g stroke="hsl(${hue} 14% 34%)" stroke-width="2">
    <path d="M330 500 H930 M330 490 V510 M930 490 V510 M970 190 V460 M960 190 H980 M960 460 H980"/>
  </g>
  <g fill="hsl(${hue} 22% 40%)">
    <rect x="350" y="600" width="560" height="96" rx="26"/>
    <rect x="330" y="560" width="70" height="140" rx="22"/>
    <rect x="860" y="560" width="70" height="140" rx="22"/>
  </g>
</svg>`;
  return sharp(Buffer.from(svg)).jpeg({ quality: 82 }).toBuffer();
}
