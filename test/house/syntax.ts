import { parseSync, Visitor } from 'rolldown/utils';
import type { SourceText } from './source-text.ts';

/** Syntax tree and module record of a source file; a file that does not parse is an error. */
export function parse({ path, text }: SourceText) {
  const result = parseSync(path, text);
  const [fault] = result.errors;
  if (fault) throw new SyntaxError(`${path}: ${fault.message}`);
  return result;
}

/** What a dynamic import shows in place of a specifier if that is known only when the program runs. */
export const COMPUTED = '(computed)';

const literal = /^(['"`])([^'"`$]*)\1$/;

/** Specifiers of everything a source file imports or re-exports: static, dynamic and in types. */
export function specifiersOf(file: SourceText): readonly string[] {
  const { module, program } = parse(file);
  const specifiers = module.staticImports.map(({ moduleRequest }) => moduleRequest.value);
  for (const { entries } of module.staticExports) {
    specifiers.push(...entries.flatMap(({ moduleRequest }) => (moduleRequest ? [moduleRequest.value] : [])));
  }
  for (const { moduleRequest } of module.dynamicImports) {
    const written = file.text.slice(moduleRequest.start, moduleRequest.end);
    specifiers.push(literal.exec(written)?.[2] ?? COMPUTED);
  }
  new Visitor({
    TSImportType: ({ source }) => {
      specifiers.push(source.value);
    },
  }).visit(program);
  return [...new Set(specifiers)];
}
