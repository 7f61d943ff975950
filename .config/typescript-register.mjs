// Lets Node run the TypeScript source as it stands, without a build:
//   node --conditions=@endfloat/source --import ./.config/typescript-register.mjs <file>.ts
import { register } from 'node:module';

process.setSourceMapsEnabled(true);
register('./typescript-loader.mjs', import.meta.url);
