import type { World } from '../shell/world.ts';

export type Shell = 'bash' | 'zsh' | 'fish';

/** Prints what a shell must read to complete the program's words. */
export function completion(shell: Shell, { out }: World): number {
  out.write(SCRIPTS[shell]);
  return 0;
}

// Each asks the program itself for the words, one a line, with a tab before what a word means; so nothing here goes stale.
const SCRIPTS: Readonly<Record<Shell, string>> = {
  bash: `# tenths completion bash >> ~/.bashrc
_tenths() {
  local IFS=$'\\n' word
  COMPREPLY=()
  while IFS= read -r word; do
    word="\${word%%$'\\t'*}"
    [[ "$word" == "\${COMP_WORDS[COMP_CWORD]}"* ]] && COMPREPLY+=("$word")
  done < <(tenths complete -- "\${COMP_WORDS[@]:1:COMP_CWORD}" 2>/dev/null)
}
complete -o default -F _tenths tenths
`,
  zsh: `#compdef tenths
# tenths completion zsh > ~/.zfunc/_tenths, with fpath+=~/.zfunc before compinit
_tenths() {
  local -a words_found
  local line
  while IFS= read -r line; do
    words_found+=("\${\${line%%$'\\t'*}//:/\\\\:}:\${line#*$'\\t'}")
  done < <(tenths complete -- "\${(@)words[2,CURRENT]}" 2>/dev/null)
  if (( \${#words_found} )); then _describe -V tenths words_found; else _files; fi
}
compdef _tenths tenths
`,
  fish: `# tenths completion fish > ~/.config/fish/completions/tenths.fish
function __tenths_complete
  set -l words (commandline -opc)[2..-1] (commandline -ct)
  tenths complete -- $words 2>/dev/null
end
complete -c tenths -k -a '(__tenths_complete)'
`,
};
