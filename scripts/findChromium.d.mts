export function findChromium(
  env: NodeJS.ProcessEnv,
): Promise<{ executable: string; env: Record<string, string> }>;
