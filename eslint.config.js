import js from '@eslint/js';
import svelte from 'eslint-plugin-svelte';
import { defineConfig } from 'eslint/config';
import globals from 'globals';
import ts from 'typescript-eslint';
import svelteConfig from './svelte.config.js';

/** The habits of the house; each message says the way out. */
const NEVER_IN_TESTS = [
  {
    selector:
      'MemberExpression[object.name=/^(it|test|describe)$/][property.name=/^(skip|only|todo|fails|skipIf|runIf)$/]',
    message: 'Every test runs, always: mend it or delete it.',
  },
  {
    selector: 'CallExpression[callee.property.name=/^toThrow/][arguments.length=0]',
    message: 'Say what is thrown: toThrow(/pattern/).',
  },
];
const NEVER_IN_SRC = [
  {
    selector: 'ImportExpression[source.type!="Literal"]',
    message: 'Name the file: the architecture test cannot read a computed import.',
  },
  {
    selector: 'MemberExpression[object.type="MetaProperty"][property.name="glob"]',
    message: 'Name the files: the architecture test cannot read import.meta.glob.',
  },
];

export default defineConfig(
  { ignores: ['dist/', 'coverage/', 'audio-fixtures/', '.training/'] },
  js.configs.recommended,
  ts.configs.strict,
  svelte.configs.recommended,
  {
    languageOptions: { globals: { ...globals.browser, ...globals.node } },
    linterOptions: { reportUnusedDisableDirectives: 'error' },
    rules: {
      // TypeScript checks names; eslint does not know DOM types.
      'no-undef': 'off',
      // Typed-array loops read by index inside known bounds; the alternative is noise on every line.
      '@typescript-eslint/no-non-null-assertion': 'off',
      '@typescript-eslint/ban-ts-comment': 'error',
      // A type that is written by its name alone wherever it is part of another.
      '@typescript-eslint/no-empty-object-type': ['error', { allowInterfaces: 'with-single-extends' }],
      eqeqeq: 'error',
      // A field may be named so that the rest goes on without it.
      '@typescript-eslint/no-unused-vars': ['error', { ignoreRestSiblings: true }],
      'no-warning-comments': ['error', { terms: ['todo', 'fixme', 'xxx'] }],
    },
  },
  {
    files: ['**/*.svelte', '**/*.svelte.ts'],
    languageOptions: { parserOptions: { parser: ts.parser, svelteConfig } },
  },
  {
    files: ['src/**/*.{ts,svelte}'],
    rules: {
      'no-restricted-syntax': ['error', ...NEVER_IN_SRC],
      // A file is one idea.
      'max-lines': ['error', 300],
    },
  },
  {
    // What only the types can tell. (Svelte's own files would take as long again to read.)
    files: ['src/**/*.ts'],
    ignores: ['**/*.svelte.ts'],
    languageOptions: { parserOptions: { projectService: true } },
    rules: {
      '@typescript-eslint/await-thenable': 'error',
      '@typescript-eslint/no-floating-promises': 'error',
      '@typescript-eslint/no-misused-promises': 'error',
      '@typescript-eslint/no-unsafe-argument': 'error',
      '@typescript-eslint/no-unsafe-assignment': 'error',
      '@typescript-eslint/no-unsafe-return': 'error',
      '@typescript-eslint/only-throw-error': 'error',
      '@typescript-eslint/switch-exhaustiveness-check': [
        'error',
        { considerDefaultExhaustiveForUnions: true, requireDefaultForNonUnion: true },
      ],
    },
  },
  {
    // The engine knows no clock and no chance; DOM and Node do not compile there (src/engine/tsconfig.json).
    files: ['src/engine/**/*.ts'],
    rules: {
      'no-restricted-globals': ['error', 'Date', 'globalThis', 'Intl'],
      'no-restricted-properties': ['error', { object: 'Math', property: 'random' }],
    },
  },
  {
    // The page reaches devices through the rooms of io, which tests replace.
    files: ['src/ui/**/*.{ts,svelte}'],
    rules: {
      'no-restricted-globals': [
        'error',
        'navigator',
        'indexedDB',
        'localStorage',
        'AudioContext',
        'Worker',
        'fetch',
      ],
    },
  },
  {
    files: ['src/**/*.{ts,svelte}'],
    ignores: ['src/terminal/**'],
    rules: { 'no-console': 'error' },
  },
  {
    files: ['tests/**/*.{ts,mjs}'],
    rules: { 'no-restricted-syntax': ['error', ...NEVER_IN_TESTS] },
  },
);
