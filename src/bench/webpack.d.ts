import type { Configuration } from 'webpack'

/** The webpack configuration of the bench, built into dist-bench/ unless another folder is named. */
export function benchConfig(options?: { mode?: 'production' | 'development'; folder?: string }): Configuration

declare const config: Configuration
export default config
