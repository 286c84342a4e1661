/**
 * The commands of a step that checks, around a call of the program. It cannot pass unchecked: a check that did not run has
 * written no summary.
 */
export const checkStep = (
  call: string,
): string => `# 0 says that all is well, 1 that readings are out, which a build log may well show.
# Anything else says that a document cannot be trusted, or that nothing was checked.
code=0
out=$(mktemp -d "$RUNNER_TEMP/tenths-XXXXXX")
${call} \\
  --format text --format "github:$out/annotations" --format "markdown:$out/summary.md" || code=$?
if [ -s "$out/summary.md" ]; then
  cat "$out/annotations"
  # A longer summary would not be shown at all.
  head -c 1000000 "$out/summary.md" >> "$GITHUB_STEP_SUMMARY"
else
  echo '::error::tenths has checked nothing'
  [ $code -gt 1 ] || code=2
fi
[ $code -le 1 ] || exit $code
`;

const indented = (text: string, by: number): string => text.replace(/^(?=.)/gm, ' '.repeat(by));

/**
 * A job that cannot pass unchecked. What it installs is what the shop's lock file names, with its digest: a name alone would be
 * whoever registered it. Installing is a step of its own, since npm as well ends with 1 where it fails.
 */
export const CI_JOB = `name: tenths
on: [push, pull_request]
permissions: { contents: read }
jobs:
  check:
    runs-on: ubuntu-latest
    steps:
      - uses: actions/checkout@v4
        with: { persist-credentials: false }
      - uses: actions/setup-node@v4
        with: { node-version: 22 }
      - name: Install what package-lock.json names
        run: |
          npm ci --ignore-scripts
          node_modules/.bin/tenths --version
      - name: Check
        run: |
${indented(checkStep('node_modules/.bin/tenths check'), 10)}`;
