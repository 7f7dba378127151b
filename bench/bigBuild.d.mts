export function writeBigBuild(
  folder: string,
  size: { readonly steps: number; readonly parts: number; readonly connections: number; readonly word?: string },
): void;
