import { writeFileSync } from 'node:fs';
import { publishedSchemas } from './schemas.ts';

for (const { path, text } of await publishedSchemas()) writeFileSync(path, text);
