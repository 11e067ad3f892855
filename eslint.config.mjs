import officeAddins from 'eslint-plugin-office-addins'
import tseslint from 'typescript-eslint'

export default tseslint.config(
  { ignores: ['.cache/', 'dist/', 'dist-bench/', 'node_modules/'] },
  ...tseslint.configs.strict,
  ...tseslint.configs.stylistic,
  { plugins: { 'office-addins': officeAddins } },
  {
    files: ['src/office/**/*.ts', 'taskpane/**/*.{ts,tsx}'],
    rules: {
      'office-addins/call-sync-after-load': 'error',
      'office-addins/call-sync-before-read': 'error',
      'office-addins/load-object-before-read': 'error',
      'office-addins/no-context-sync-in-loop': 'error',
      'office-addins/no-navigational-load': 'error',
      'office-addins/no-office-initialize': 'error',
      'office-addins/test-for-null-using-isNullObject': 'error',
    },
  },
)
