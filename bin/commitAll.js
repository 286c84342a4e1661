import { execFileSync } from 'node:child_process';

/** Commits everything in a folder, which becomes a repository with the first commit. */
export function commitAll(folder) {
  const git = (...words) => execFileSync('git', ['-C', folder, ...NOBODY, ...words], { env: gitAlone() });
  git('init', '-q');
  git('add', '.');
  git('commit', '-q', '-m', 'state');
}

const NOBODY = ['-c', 'user.name=nobody', '-c', 'user.email=nobody@example.org'];

/** Without the settings, hooks and templates of whoever builds; in a hook, the environment names another repository. */
function gitAlone() {
  const others = Object.entries(process.env).filter(([name]) => !name.startsWith('GIT_'));
  return { ...Object.fromEntries(others), GIT_CONFIG_GLOBAL: '/dev/null', GIT_CONFIG_NOSYSTEM: '1' };
}
