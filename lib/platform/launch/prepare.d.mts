export declare function buildPages(signal: AbortSignal): Promise<void>;
