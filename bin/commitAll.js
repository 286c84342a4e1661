import { execFileSync } from 'node:child_process';

/** Commits everything in a folder, which becomes a repository with the first commit. */
export function commitAll(folder) {
  const git = (...words) => execFileSync('git', ['-C', folder, ...NOBODY, ...words], { env: withoutGit() });
  git('init', '-q');
  git('add', '.');
  git('commit', '-q', '-m', 'state');
}

const NOBODY = ['user.name=nobody', 'user.email=nobody@example.org', 'commit.gpgSign=false'].flatMap(
  (each) => ['-c', each],
);

/** In a hook, git is told of another repository. */
const withoutGit = () =>
  Object.fromEntries(Object.entries(process.env).filter(([name]) => !name.startsWith('GIT_')));
