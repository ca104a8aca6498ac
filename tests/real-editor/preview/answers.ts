// What the language server answers for files of the disk: asked through the protocol, in this process.
import { readFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { type DrawingFileAnswer, drawingRequest, type PreviewAnswer, previewRequest } from '../../../server/lsp/requests.ts';
import { connect } from '../../lsp/client.ts';

export interface Answered {
  readonly uri: string;
  readonly answer: PreviewAnswer;
  /** Each drawing as a file of its own, by its id. */
  readonly files: Readonly<Record<string, DrawingFileAnswer>>;
}

/** Answers for texts by their paths; a text that is undefined is read from the disk. */
export async function answersOf(texts: Readonly<Record<string, string | undefined>>): Promise<Record<string, Answered>> {
  const client = await connect();
  try {
    const found: Record<string, Answered> = {};
    for (const [path, text] of Object.entries(texts)) {
      const uri = pathToFileURL(path).href;
      await client.open(uri, text ?? readFileSync(path, 'utf8'));
      const answer = await client.request<PreviewAnswer>(previewRequest, { uri });
      const files: Record<string, DrawingFileAnswer> = {};
      for (const { id } of answer.drawings)
        files[id] = await client.request<DrawingFileAnswer>(drawingRequest, { uri, id, theme: 'light' });
      found[path] = { uri, answer, files };
    }
    return found;
  } finally {
    await client.end();
  }
}
