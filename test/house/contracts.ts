import type { ESTree } from 'rolldown/utils';
import { type DocComment, docComment } from './doc-comment.ts';
import type { SourceText } from './source-text.ts';
import { parse } from './syntax.ts';

/** Rooms in which every exported function states its contract. */
export const documented = [
  'quantities',
  'numerics',
  'air',
  'elements',
  'fan',
  'airway',
  'heat',
  'sound',
] as const;

/** Rooms of physics, in which it also states where its law comes from. */
const sourced: readonly string[] = ['air', 'elements', 'fan', 'heat', 'sound'];

/** Functions of these rooms that hold no law: they declare, read or rearrange. */
export const lawless: readonly string[] = [
  'elements/element.ts elementKind',
  'elements/perforated-sheet.ts patternOf',
  'elements/perforated-sheet.ts readPerforatedSheet',
];

const unit = /\[[^\][]+\]/;
const source = /(?:^|[.;)] )Source: \S/m;

interface Contract {
  readonly name: string;
  readonly doc: DocComment | undefined;
  readonly parameters: readonly Parameter[];
  readonly returnsNumber: boolean;
}

interface Parameter {
  /** Empty if it is taken apart in the signature: the comment may then call it what it likes. */
  readonly name: string;
  readonly isNumber: boolean;
}

/** Names of the types that a file imports from the room of quantities: numbers with a unit. */
function quantityTypes(program: ESTree.Program): ReadonlySet<string> {
  const imports = program.body.filter((node) => node.type === 'ImportDeclaration');
  const own = imports.filter(({ source: from }) => from.value.endsWith('/dimensions.ts'));
  return new Set(own.flatMap(({ specifiers }) => specifiers.map(({ local }) => local.name)));
}

/** Whether a type is a number, a list of numbers, or one of these or nothing. */
function isNumeric(type: ESTree.TSType, quantities: ReadonlySet<string>): boolean {
  const numeric = (inner: ESTree.TSType): boolean => isNumeric(inner, quantities);
  switch (type.type) {
    case 'TSNumberKeyword':
      return true;
    case 'TSArrayType':
      return numeric(type.elementType);
    case 'TSTypeOperator':
      return numeric(type.typeAnnotation);
    case 'TSUnionType':
      return type.types.some(numeric);
    case 'TSTypeReference': {
      const name = type.typeName.type === 'Identifier' ? type.typeName.name : '';
      if (name === 'Float64Array' || quantities.has(name)) return true;
      return /Array$|^ArrayLike$/.test(name) && (type.typeArguments?.params.some(numeric) ?? false);
    }
    default:
      return false;
  }
}

type Callable = ESTree.Function | ESTree.ArrowFunctionExpression;

function parameterOf(node: ESTree.ParamPattern, quantities: ReadonlySet<string>): Parameter {
  if (node.type === 'TSParameterProperty') return { name: '', isNumber: false };
  if (node.type === 'AssignmentPattern') return parameterOf(node.left, quantities);
  const pattern = node.type === 'RestElement' ? node.argument : node;
  const type = node.typeAnnotation?.typeAnnotation;
  return {
    name: pattern.type === 'Identifier' ? pattern.name : '',
    isNumber: type !== undefined && isNumeric(type, quantities),
  };
}

/** Functions that a statement exports, by name. */
function callables(node: ESTree.ExportNamedDeclaration): readonly (readonly [string, Callable])[] {
  const { declaration } = node;
  if (declaration?.type === 'FunctionDeclaration' || declaration?.type === 'TSDeclareFunction') {
    return [[declaration.id?.name ?? '', declaration]];
  }
  if (declaration?.type !== 'VariableDeclaration') return [];
  return declaration.declarations.flatMap(({ id, init }) => {
    const isCallable = init?.type === 'ArrowFunctionExpression' || init?.type === 'FunctionExpression';
    return isCallable && id.type === 'Identifier' ? [[id.name, init] as const] : [];
  });
}

function contractsOf(file: SourceText): readonly Contract[] {
  const { program, comments } = parse(file);
  const quantities = quantityTypes(program);
  const docs = comments.filter(({ type, value }) => type === 'Block' && value.startsWith('*'));
  const exported = program.body.filter((node) => node.type === 'ExportNamedDeclaration');
  return exported.flatMap((node) => {
    const own = docs.findLast(
      ({ end }) => end <= node.start && file.text.slice(end, node.start).trim() === '',
    );
    return callables(node).map(([name, callable]) => {
      const result = callable.returnType?.typeAnnotation;
      return {
        name,
        doc: own && docComment(own.value.slice(1)),
        parameters: callable.params.map((parameter) => parameterOf(parameter, quantities)),
        returnsNumber: result !== undefined && isNumeric(result, quantities),
      };
    });
  });
}

function parameterFaults({ parameters }: Contract, doc: DocComment): readonly string[] {
  const written = [...doc.parameters];
  const faults = parameters.flatMap(({ name, isNumber }, index) => {
    const entry = name === '' ? written[index] : written.find(([own]) => own === name);
    const called = name || `number ${index + 1}`;
    if (!entry) return [`says nothing of parameter ${called}`];
    return isNumber && !unit.test(entry[1]) ? [`gives no unit of parameter ${called}`] : [];
  });
  const unnamed = parameters.filter(({ name }) => name === '').length;
  const strangers = written.filter(([own]) => !parameters.some(({ name }) => name === own));
  const excess = strangers
    .slice(unnamed)
    .map(([own]) => `speaks of a parameter ${own} that it does not have`);
  return [...faults, ...excess];
}

function contractFaults(contract: Contract, needsSource: boolean): readonly string[] {
  const { doc } = contract;
  if (!doc) return ['has no doc comment'];
  const faults = [...parameterFaults(contract, doc)];
  if (doc.prose === '') faults.push('does not say what it is for');
  if (contract.returnsNumber && !unit.test(doc.prose) && !unit.test(doc.returns)) {
    faults.push('gives no unit of its result');
  }
  if (needsSource && !source.test(doc.prose)) faults.push('names no source');
  return faults;
}

/**
 * What the doc comments of exported functions leave unsaid.
 *
 * @param file path from `src` and content
 * @returns a sentence for each gap
 */
export function unsaid(file: SourceText): readonly string[] {
  const [room = ''] = file.path.split('/');
  const gaps = contractsOf(file).flatMap((contract) => {
    const name = `${file.path} ${contract.name}`;
    const needsSource = sourced.includes(room) && !lawless.includes(name);
    return contractFaults(contract, needsSource).map((fault) => `${name} ${fault}`);
  });
  return exportsByList(file) ? [...gaps, `${file.path} exports by a list, apart from its comments`] : gaps;
}

/** Whether names are exported elsewhere than where they are declared. */
function exportsByList(file: SourceText): boolean {
  const exported = parse(file).program.body.filter((node) => node.type === 'ExportNamedDeclaration');
  return exported.some((node) => node.specifiers.length > 0);
}

/** Path and name of every exported function of a file. */
export function exportedFunctions(file: SourceText): readonly string[] {
  return contractsOf(file).map(({ name }) => `${file.path} ${name}`);
}
