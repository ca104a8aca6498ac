// The preview beside the text: one panel that shows the drawings of one file, as it is and as it becomes.
import * as vscode from 'vscode';
import { type BaseLanguageClient, State } from 'vscode-languageclient';
import {
  type DrawingFileAnswer,
  type DrawingParams,
  drawingRequest,
  type PreviewAnswer,
  type PreviewParams,
  previewRequest,
} from '../../server/lsp/requests.ts';
import { isOurs } from '../texts.ts';
import { pageHtml } from './html.ts';
import { type ExportFormat, type FromPage, readKept, readMessage, type ToPage } from './messages.ts';
import { thingsAt } from './things.ts';
import { fileNameFor } from './words.ts';

const viewType = 'pintle.preview';
/** How long the text must rest before it is drawn anew, in milliseconds. */
const rest = 150;
/** A picture of points is made this much finer than the drawing's own unit. */
const finer = 2;
/** How long the page may take to make a picture, in milliseconds. */
const patience = 20_000;
/** Answers that say only that the text has changed meanwhile: request cancelled, content modified, server cancelled. */
const passing = new Set([-32800, -32801, -32802]);

/** Registers the command, and brings the panel back when its window is loaded anew. */
export function registerPreview(context: vscode.ExtensionContext, client: BaseLanguageClient): vscode.Disposable {
  let open: Preview | undefined;
  const adopt = (panel: vscode.WebviewPanel, uri: vscode.Uri, stays: boolean): void => {
    open?.panel.dispose();
    const preview = new Preview(context, client, panel, uri, stays);
    open = preview;
    panel.onDidDispose(() => {
      preview.dispose();
      if (open === preview) open = undefined;
    });
  };
  return vscode.Disposable.from(
    vscode.commands.registerCommand('pintle.openPreview', (given?: unknown) => {
      const uri = given instanceof vscode.Uri ? given : activeSite()?.document.uri;
      if (uri === undefined) return vscode.window.showInformationMessage('Open a .gate file first: its drawings are shown beside it.');
      if (open !== undefined) {
        open.panel.reveal(undefined, true);
        open.show(uri);
        return undefined;
      }
      adopt(
        vscode.window.createWebviewPanel(
          viewType,
          'Preview',
          { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true },
          optionsFor(context),
        ),
        uri,
        !followsByDefault(uri),
      );
      return undefined;
    }),
    vscode.window.registerWebviewPanelSerializer(viewType, {
      deserializeWebviewPanel: async (panel, state) => {
        const kept = readKept(state);
        const uri = kept.uri === undefined ? activeSite()?.document.uri : uriFrom(kept.uri);
        if (uri === undefined) {
          panel.dispose();
          return;
        }
        panel.webview.options = optionsFor(context);
        adopt(panel, uri, kept.stays ?? !followsByDefault(uri));
      },
    }),
    { dispose: () => open?.panel.dispose() },
  );
}

const optionsFor = (context: vscode.ExtensionContext): vscode.WebviewOptions => ({
  enableScripts: true,
  localResourceRoots: [vscode.Uri.joinPath(context.extensionUri, 'dist')],
});
const followsByDefault = (uri: vscode.Uri): boolean => vscode.workspace.getConfiguration('pintle', uri).get('preview.follow', true);

function activeSite(): vscode.TextEditor | undefined {
  const editor = vscode.window.activeTextEditor;
  return editor !== undefined && isOurs(editor.document) ? editor : undefined;
}

function uriFrom(text: string): vscode.Uri | undefined {
  try {
    return vscode.Uri.parse(text, true);
  } catch {
    return undefined;
  }
}

const nameOf = (uri: vscode.Uri): string => uri.path.split('/').at(-1) ?? 'this file';

class Preview {
  readonly panel: vscode.WebviewPanel;
  private readonly client: BaseLanguageClient;
  private readonly disposables: vscode.Disposable[] = [];
  private uri: vscode.Uri;
  private stays: boolean;
  private answer: PreviewAnswer | undefined;
  /** The page's script runs and hears. */
  private ready = false;
  /** What is shown is not the newest. */
  private stale = true;
  private timer: ReturnType<typeof setTimeout> | undefined;
  private asked = 0;
  private asking: vscode.CancellationTokenSource | undefined;
  /** What was clicked last, and where the cursor was put for it. */
  private clicked: { readonly thing: string; readonly place: vscode.Position } | undefined;
  private readonly pictures = new Map<number, (png: string | undefined) => void>();
  private disposed = false;

  constructor(context: vscode.ExtensionContext, client: BaseLanguageClient, panel: vscode.WebviewPanel, uri: vscode.Uri, stays: boolean) {
    this.client = client;
    this.panel = panel;
    this.uri = uri;
    this.stays = stays;
    const { webview } = panel;
    panel.iconPath = {
      light: vscode.Uri.joinPath(context.extensionUri, 'client', 'media', 'file-light.svg'),
      dark: vscode.Uri.joinPath(context.extensionUri, 'client', 'media', 'file-dark.svg'),
    };
    this.disposables.push(
      webview.onDidReceiveMessage((given: unknown) => this.hear(readMessage(given))),
      panel.onDidChangeViewState(() => {
        if (!panel.visible) this.ready = false;
        else if (this.ready && this.stale) this.refresh(0);
      }),
      vscode.window.onDidChangeActiveTextEditor((editor) => {
        if (!this.stays && editor !== undefined && isOurs(editor.document)) this.show(editor.document.uri);
      }),
      vscode.workspace.onDidChangeTextDocument(({ document, contentChanges }) => {
        // Another file may be a library of this one.
        if (isOurs(document) && contentChanges.length > 0) this.refresh();
      }),
      // Whatever else changes what is known, a library on the disk for one, changes what is found.
      vscode.languages.onDidChangeDiagnostics(({ uris }) => {
        if (uris.some((changed) => changed.toString() === this.uri.toString())) this.refresh();
      }),
      vscode.workspace.onDidCloseTextDocument((document) => {
        if (isOurs(document) && document.uri.toString() !== this.uri.toString()) this.refresh();
      }),
      vscode.window.onDidChangeTextEditorSelection(({ textEditor }) => {
        if (textEditor.document.uri.toString() === this.uri.toString()) this.followCursor(textEditor);
      }),
      client.onDidChangeState(({ newState }) => {
        if (newState === State.Running) this.refresh();
      }),
    );
    // Without the words of the page's script nothing is let in; see html.ts.
    const file = (name: string): string => webview.asWebviewUri(vscode.Uri.joinPath(context.extensionUri, 'dist', name)).toString();
    webview.html = pageHtml({ source: webview.cspSource, nonce: nonce(), script: file('preview.js'), style: file('preview.css') });
    this.entitle();
  }

  dispose(): void {
    this.disposed = true;
    clearTimeout(this.timer);
    this.asking?.cancel();
    for (const done of this.pictures.values()) done(undefined);
    vscode.Disposable.from(...this.disposables).dispose();
  }

  /** Shows another file, or the same one again. */
  show(uri: vscode.Uri): void {
    if (uri.toString() === this.uri.toString()) return;
    this.uri = uri;
    this.answer = undefined;
    this.clicked = undefined;
    this.entitle();
    this.tellFile();
    this.refresh(0);
  }

  private entitle(): void {
    this.panel.title = `Preview ${nameOf(this.uri)}`;
  }

  private send(message: ToPage): void {
    if (this.ready) void this.panel.webview.postMessage(message);
  }

  private tellFile(): void {
    this.send({ type: 'file', uri: this.uri.toString(), name: nameOf(this.uri), stays: this.stays });
  }

  private hear(message: FromPage | undefined): void {
    switch (message?.type) {
      case 'ready':
        this.ready = true;
        this.tellFile();
        if (this.answer !== undefined) this.tellAnswer(this.answer);
        return this.refresh(0);
      case 'go':
        return void this.go(message.thing);
      case 'stay': {
        this.stays = message.stays;
        const active = activeSite();
        if (!this.stays && active !== undefined) this.show(active.document.uri);
        return;
      }
      case 'export':
        return void this.save(message.drawing, message.format);
      case 'rasterised': {
        const done = this.pictures.get(message.number);
        this.pictures.delete(message.number);
        return done?.(message.png);
      }
      case 'problems':
        return void vscode.commands.executeCommand('workbench.actions.view.problems');
    }
  }

  /** Draws anew, once nothing has changed for a moment. */
  private refresh(after = rest): void {
    if (this.disposed) return;
    this.stale = true;
    clearTimeout(this.timer);
    this.timer = setTimeout(() => void this.ask(), after);
  }

  private async ask(): Promise<void> {
    if (!this.ready || !this.panel.visible) return;
    const number = ++this.asked;
    const { uri } = this;
    this.asking?.cancel();
    const asking = new vscode.CancellationTokenSource();
    this.asking = asking;
    /** Something newer is under way, or what was asked about is gone. */
    const isLate = (): boolean => this.disposed || number !== this.asked || uri.toString() !== this.uri.toString();
    let document: vscode.TextDocument;
    try {
      // Open, so that the server has it; not shown.
      document = await vscode.workspace.openTextDocument(uri);
    } catch {
      if (!isLate())
        this.send({ type: 'trouble', message: `${nameOf(uri)} cannot be read any more. Open another .gate file to see its drawings.` });
      return;
    }
    const { version } = document;
    try {
      const params: PreviewParams = { uri: uri.toString() };
      const answer = await this.client.sendRequest<PreviewAnswer | null | undefined>(previewRequest, params, asking.token);
      // A text that has changed meanwhile is asked about again by its own change.
      if (isLate() || document.version !== version) return;
      if (answer === null || answer === undefined) {
        this.send({
          type: 'trouble',
          message: `${nameOf(uri)} is not known to the language server as a site, so there is nothing to draw. Is it a .gate file?`,
        });
        return;
      }
      this.stale = false;
      this.answer = answer;
      this.tellAnswer(answer);
    } catch (error) {
      if (isLate()) return;
      if (isPassing(error)) this.refresh(rest * 2);
      else
        this.send({
          type: 'trouble',
          message:
            'The language server gives no answer, so nothing new can be drawn. Its output channel “Pintle” says more; the command “Pintle: Restart the Language Server” starts it again.',
        });
    }
  }

  private tellAnswer(answer: PreviewAnswer): void {
    this.send({ type: 'answer', uri: this.uri.toString(), answer });
    const editor = vscode.window.visibleTextEditors.find((visible) => visible.document.uri.toString() === this.uri.toString());
    if (editor !== undefined) this.followCursor(editor);
  }

  /** The places of an answer that is older than the text would be wrong: the next answer brings the cursor with it. */
  private followCursor({ selection, document }: vscode.TextEditor): void {
    if (this.answer === undefined || this.stale || document.uri.toString() !== this.uri.toString()) return;
    const { active } = selection;
    const clicked = this.clicked?.place.isEqual(active) === true ? this.clicked.thing : undefined;
    if (clicked === undefined) this.clicked = undefined;
    this.send({ type: 'cursor', things: thingsAt(this.answer.things, active, clicked) });
  }

  private async go(id: string): Promise<void> {
    const thing = this.answer?.things.find((one) => one.id === id);
    if (thing === undefined) return;
    try {
      const document = await vscode.workspace.openTextDocument(this.uri);
      const { start, end } = thing.range;
      const range = document.validateRange(new vscode.Range(start.line, start.character, end.line, end.character));
      this.clicked = { thing: id, place: range.start };
      const visible = vscode.window.visibleTextEditors.find((editor) => editor.document === document);
      const column =
        visible?.viewColumn ?? (this.panel.viewColumn === vscode.ViewColumn.One ? vscode.ViewColumn.Two : vscode.ViewColumn.One);
      // Only the cursor is put there: a whole block that is selected is gone with the next key.
      const editor = await vscode.window.showTextDocument(document, {
        viewColumn: column,
        selection: new vscode.Range(range.start, range.start),
      });
      editor.revealRange(range, vscode.TextEditorRevealType.InCenterIfOutsideViewport);
    } catch {
      void vscode.window.showErrorMessage(`${nameOf(this.uri)} cannot be opened, so there is no line to go to.`);
    }
  }

  private async save(drawing: string, format: ExportFormat): Promise<void> {
    const { uri } = this;
    const title = this.answer?.drawings.find((one) => one.id === drawing)?.title ?? 'drawing';
    const theme = vscode.workspace.getConfiguration('pintle', uri).get<DrawingParams['theme']>('preview.export', 'light');
    let file: DrawingFileAnswer | null | undefined;
    try {
      const params: DrawingParams = { uri: uri.toString(), id: drawing, theme };
      file = await this.client.sendRequest<DrawingFileAnswer | null>(drawingRequest, params);
    } catch {
      void vscode.window.showErrorMessage(
        'The language server gives no answer, so the drawing was not saved. The command “Pintle: Restart the Language Server” starts it again.',
      );
      return;
    }
    if (file === null || file === undefined || file.svg === '') {
      void vscode.window.showInformationMessage('There is nothing to draw yet, so nothing was saved.');
      return;
    }
    const place = placeFor(uri, fileNameFor(uri.path, drawing, format));
    const to = await vscode.window.showSaveDialog({
      title: `Save ${title}`,
      filters: format === 'svg' ? { 'SVG drawing': ['svg'] } : { 'PNG picture': ['png'] },
      ...(place === undefined ? {} : { defaultUri: place }),
    });
    if (to === undefined) return;
    const bytes = format === 'svg' ? new TextEncoder().encode(file.svg) : await this.picture(file);
    if (bytes === undefined) {
      void vscode.window.showErrorMessage(
        'The picture could not be made, so nothing was saved. Keep the preview in sight while it is made, or save it as SVG.',
      );
      return;
    }
    try {
      await vscode.workspace.fs.writeFile(to, bytes);
    } catch (error) {
      const why = error instanceof vscode.FileSystemError ? ` (${error.code})` : '';
      void vscode.window.showErrorMessage(`${nameOf(to)} could not be written${why}. Choose another folder.`);
      return;
    }
    const open = 'Open';
    const answer = await vscode.window.showInformationMessage(`Saved ${nameOf(to)}.`, open);
    if (answer === open) await vscode.commands.executeCommand('vscode.open', to);
  }

  /** Made by the page, which can paint; undefined where it cannot. */
  private async picture({ svg, width, height }: DrawingFileAnswer): Promise<Uint8Array | undefined> {
    if (!this.ready) return undefined;
    const number = ++pictureCount;
    const png = await new Promise<string | undefined>((done) => {
      this.pictures.set(number, done);
      this.send({ type: 'rasterise', number, svg, width, height, scale: finer });
      setTimeout(() => {
        this.pictures.delete(number);
        done(undefined);
      }, patience);
    });
    return png === undefined ? undefined : Uint8Array.from(atob(png), (letter) => letter.charCodeAt(0));
  }
}

let pictureCount = 0;

const isPassing = (error: unknown): boolean =>
  typeof error === 'object' && error !== null && 'code' in error && passing.has(Number(error.code));

/** Beside the file, or in the first folder for a text that has none. */
function placeFor(uri: vscode.Uri, name: string): vscode.Uri | undefined {
  if (uri.scheme !== 'untitled') return vscode.Uri.joinPath(uri, '..', name);
  const folder = vscode.workspace.workspaceFolders?.[0]?.uri;
  return folder === undefined ? undefined : vscode.Uri.joinPath(folder, name);
}

/** 128 bits that nobody can guess. */
const nonce = (): string => [...crypto.getRandomValues(new Uint8Array(16))].map((byte) => byte.toString(16).padStart(2, '0')).join('');
