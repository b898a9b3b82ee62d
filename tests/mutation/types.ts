import { readFileSync } from 'node:fs';
import { dirname } from 'node:path';
import ts from 'typescript';

/** Says of a changed file whether the compiler would have refused it; `config`: a tsconfig.json. The others stay as they are. */
export function createTypes(config: string): (changed: string) => boolean {
  const { config: read } = ts.readConfigFile(config, (path) => readFileSync(path, 'utf8')) as {
    config: unknown;
  };
  const { fileNames, options } = ts.parseJsonConfigFileContent(read, ts.sys, dirname(config));
  const versions = new Map<string, number>();
  const service = ts.createLanguageService({
    getCompilationSettings: () => ({ ...options, noEmit: true }),
    getScriptFileNames: () => fileNames,
    getScriptVersion: (path) => String(versions.get(path) ?? 0),
    getScriptSnapshot: (path) =>
      ts.sys.fileExists(path) ? ts.ScriptSnapshot.fromString(readFileSync(path, 'utf8')) : undefined,
    getCurrentDirectory: () => dirname(config),
    getDefaultLibFileName: ts.getDefaultLibFilePath,
    fileExists: (path) => ts.sys.fileExists(path),
    readFile: (path) => ts.sys.readFile(path),
    directoryExists: (path) => ts.sys.directoryExists(path),
  });
  return (changed) => {
    versions.set(changed, (versions.get(changed) ?? 0) + 1);
    const refused = service.getSemanticDiagnostics(changed).length > 0;
    // As it is written back afterwards.
    versions.set(changed, (versions.get(changed) ?? 0) + 1);
    return refused;
  };
}
