/**
 * A job that cannot pass unchecked. What it installs is what the shop's lock file names, with its digest: a name alone would be
 * whoever registered it. Installing is a step of its own, since npm as well ends with 1 where it fails, and a check that did
 * not run prints nothing. Text of documents stands in the summary behind four spaces, where no Markdown can end it.
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
          # 0 says that all is well, 1 that readings are out, which a build log may well show.
          # Anything else says that a document cannot be trusted, or that nothing was checked.
          report="$RUNNER_TEMP/tenths.txt"
          code=0
          node_modules/.bin/tenths check > "$report" || code=$?
          cat "$report"
          sed 's/^/    /' "$report" >> "$GITHUB_STEP_SUMMARY"
          [ $code -le 1 ] || exit $code
          [ -s "$report" ] || { echo '::error::tenths printed no report'; exit 2; }
          [ $code -eq 0 ] || echo '::warning::an engine is out of its limits: see the summary'
`;
