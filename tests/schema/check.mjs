// SPDX-License-Identifier: GPL-3.0-or-later
// What an editor makes of a kit or shelf file: YAML 1.2 read as its core schema says, and held against our JSON Schema.
import {readFileSync} from 'node:fs';
import {createRequire} from 'node:module';
import {join} from 'node:path';

const require = createRequire(join(process.env.TUCKWRIGHT_MODULES, 'package.json'));
const {Validator} = require('@cfworker/json-schema');
const yaml = require('yaml');

export const source = process.env.TUCKWRIGHT_SOURCE_DIR;

const read = (name) => ({$id: name, ...JSON.parse(readFileSync(join(source, 'kits', name), 'utf8'))});
const validators = {};
for (const name of ['kit.schema.json', 'shelf.schema.json']) {
  validators[name] = new Validator(read(name), '7', false);
  if (name !== 'kit.schema.json') {
    validators[name].addSchema(read('kit.schema.json'));
  }
}

/// What is wrong with the bytes: {syntax: [...]} where they are no YAML, else {faults: [...]}, by the schema of that name.
export function checked(bytes, schema) {
  let text;
  try {
    text = new TextDecoder('utf-8', {fatal: true}).decode(bytes);
  } catch (error) {
    return {syntax: [error.message], faults: []};
  }
  let documents;
  try {
    documents = yaml.parseAllDocuments(text, {version: '1.2', merge: false});
  } catch (error) {
    return {syntax: [error.message], faults: []};
  }
  const errors = [...documents].flatMap((one) => one.errors.map((error) => error.message));
  if (documents.length !== 1) {
    errors.push('not one document');
  }
  if (errors.length > 0) {
    return {syntax: errors, faults: []};
  }
  let value;
  try {
    value = documents[0].toJS({maxAliasCount: 100});
  } catch (error) {
    return {syntax: [error.message], faults: []};
  }
  const {errors: found} = validators[schema].validate(value ?? null);
  return {syntax: [], faults: found.map((fault) => `${fault.instanceLocation}: ${fault.error}`)};
}
