import type { Location, LocationLink, TextDocumentPositionParams } from 'vscode-languageserver';
import { definition } from '../../editor/index.ts';
import { Lines } from '../documents.ts';
import type { Feature } from './feature.ts';

export const feature: Feature = {
  capabilities: () => ({ definitionProvider: true }),
  answer: ({ connection, session, client, aroundFor, answers }) => {
    const { about } = answers;
    connection.onDefinition(
      about('definition', null as Location[] | LocationLink[] | null, ({ analysis, lines }, { position }: TextDocumentPositionParams) => {
        const found = definition(analysis, lines.offset(position));
        if (found === undefined) return null;
        const around = aroundFor(analysis);
        const places = found.targets.flatMap((target) => {
          const other = around.lines(target.path);
          // A library that cannot be read has no places, but its file can still be opened.
          return other === undefined && target.whole.end > 0
            ? []
            : [
                {
                  uri: session.uriOf(target.path),
                  name: (other ?? new Lines('')).range(target.name),
                  whole: (other ?? new Lines('')).range(target.whole),
                },
              ];
        });
        if (!client.takes.locationLinks) return places.map(({ uri, name }) => ({ uri, range: name }));
        return places.map(({ uri, name, whole }) => ({
          originSelectionRange: lines.range(found.from),
          targetUri: uri,
          targetRange: whole,
          targetSelectionRange: name,
        }));
      }) as Parameters<typeof connection.onDefinition>[0],
    );
  },
};
