import css from './parts.module.css';

/** The patterns that tell states apart without their colours; one set for each drawing on a page. */
export function PartPatterns() {
  return (
    <defs>
      <pattern id="part-clay" width="14" height="14" patternUnits="userSpaceOnUse">
        <path d="M-2 16L16 -2M-9 9L9 -9M5 23L23 5" className={css['stroke']} />
      </pattern>
      <pattern id="part-dry" width="16" height="16" patternUnits="userSpaceOnUse">
        <circle cx="4" cy="4" r="2" className={css['dot']} />
        <circle cx="12" cy="12" r="2" className={css['dot']} />
      </pattern>
      <pattern id="part-bisque" width="18" height="18" patternUnits="userSpaceOnUse">
        <path d="M0 9H18" className={css['stroke']} />
      </pattern>
      <pattern id="part-glaze" width="18" height="18" patternUnits="userSpaceOnUse">
        <path d="M0 0L18 18M18 0L0 18" className={css['stroke']} />
      </pattern>
      <pattern id="part-assembled" width="16" height="16" patternUnits="userSpaceOnUse">
        <path d="M0 8H16M8 0V16" className={css['stroke']} />
      </pattern>
    </defs>
  );
}
