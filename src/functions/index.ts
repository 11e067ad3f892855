import * as functions from './functions'

/** Every custom function goes by its name in capitals, as functions.json has it. */
for (const [name, body] of Object.entries(functions)) CustomFunctions.associate(name.toUpperCase(), body)
