// A client on a folder of its own, both gone when the test is over.
import { afterEach } from 'vitest';
import { type Client, type ClientOptions, connect } from './client.ts';
import { type Folder, folder } from './folder.ts';

/** What is to be done when the test is over, the last first. */
export const ends: (() => unknown)[] = [];
afterEach(async () => {
  for (const end of ends.splice(0).reverse()) await end();
});

export async function start(
  options: ClientOptions = {},
  files: Readonly<Record<string, string>> = {},
): Promise<{ client: Client; place: Folder }> {
  const place = folder(files);
  ends.push(() => place.end());
  const client = await connect({ folders: [place.uri], ...options });
  ends.push(() => client.end());
  return { client, place };
}
