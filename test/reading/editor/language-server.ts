import { type ChildProcessWithoutNullStreams, spawn } from 'node:child_process';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';

/** A message of the Language Server Protocol, as far as it is looked at here. */
interface Message {
  readonly id?: number;
  readonly method?: string;
  readonly params?: {
    readonly uri?: string;
    readonly diagnostics?: readonly Diagnostic[];
    readonly items?: unknown;
  };
  readonly result?: unknown;
}

/** What an editor underlines. */
export interface Diagnostic {
  readonly message: string;
  readonly range: { readonly start: { readonly line: number; readonly character: number } };
}

const HEAD = /^Content-Length: (\d+)\r\n(?:[^\r]+\r\n)*\r\n/;

/** Splits what a server writes into messages. Source: Language Server Protocol 3.17, base protocol. */
function messagesFrom(stream: NodeJS.ReadableStream, receive: (message: Message) => void): void {
  let buffer = Buffer.alloc(0);
  stream.on('data', (chunk: Buffer) => {
    buffer = Buffer.concat([buffer, chunk]);
    for (;;) {
      const head = HEAD.exec(buffer.toString('latin1'));
      if (!head) return;
      const start = head[0].length;
      const end = start + Number(head[1]);
      if (buffer.length < end) return;
      receive(JSON.parse(buffer.subarray(start, end).toString('utf8')) as Message);
      buffer = buffer.subarray(end);
    }
  });
}

/** Where the program of a package stands. */
function serverProgram(): string {
  const require = createRequire(import.meta.url);
  return join(dirname(require.resolve('yaml-language-server/package.json')), 'bin/yaml-language-server');
}

/** A YAML language server, driven as an editor drives it. */
export class LanguageServer {
  readonly #process: ChildProcessWithoutNullStreams;
  readonly #waiting = new Map<number, (result: unknown) => void>();
  readonly #diagnosed = new Map<string, (diagnostics: readonly Diagnostic[]) => void>();
  #next = 1;

  constructor() {
    this.#process = spawn(process.execPath, [serverProgram(), '--stdio'], { stdio: 'pipe' });
    messagesFrom(this.#process.stdout, (message) => this.#receive(message));
  }

  #send(message: object): void {
    const body = Buffer.from(JSON.stringify({ jsonrpc: '2.0', ...message }));
    this.#process.stdin.write(`Content-Length: ${body.length}\r\n\r\n`);
    this.#process.stdin.write(body);
  }

  #receive(message: Message): void {
    const { id, method, params, result } = message;
    if (method === 'textDocument/publishDiagnostics' && params?.uri !== undefined) {
      this.#diagnosed.get(params.uri)?.(params.diagnostics ?? []);
    } else if (method !== undefined && id !== undefined) {
      // Requests of the server, for settings and the like: an editor without any says nothing.
      const items = Array.isArray(params?.items) ? params.items : [];
      this.#send({ id, result: method === 'workspace/configuration' ? items.map(() => null) : null });
    } else if (id !== undefined) this.#waiting.get(id)?.(result);
  }

  /** Asks the server. */
  request(method: string, params: object): Promise<unknown> {
    const id = this.#next++;
    return new Promise((resolve) => {
      this.#waiting.set(id, resolve);
      this.#send({ id, method, params });
    });
  }

  /** Begins a conversation about the files of a folder. */
  async begin(folder: string): Promise<void> {
    const rootUri = pathToFileURL(folder).href;
    const capabilities = { textDocument: { completion: {}, hover: {}, publishDiagnostics: {} } };
    await this.request('initialize', { processId: process.pid, rootUri, capabilities });
    this.#send({ method: 'initialized', params: {} });
    const yaml = { validate: true, hover: true, completion: true, schemaStore: { enable: false } };
    this.#send({ method: 'workspace/didChangeConfiguration', params: { settings: { yaml } } });
  }

  /** Opens a text and waits for what the server underlines in it. */
  open(file: string, text: string): Promise<readonly Diagnostic[]> {
    const uri = pathToFileURL(file).href;
    return new Promise((resolve) => {
      this.#diagnosed.set(uri, resolve);
      this.#send({
        method: 'textDocument/didOpen',
        params: { textDocument: { uri, languageId: 'yaml', version: 1, text } },
      });
    });
  }

  /** Asks about the place of a mark in an opened text. */
  at(method: string, file: string, line: number, character: number): Promise<unknown> {
    const textDocument = { uri: pathToFileURL(file).href };
    return this.request(`textDocument/${method}`, { textDocument, position: { line, character } });
  }

  /** Ends the conversation. */
  async end(): Promise<void> {
    await this.request('shutdown', {});
    this.#process.kill();
  }
}
