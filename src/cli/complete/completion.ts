import { writtenText } from '../../output/escape/line.ts';
import type { World } from '../../shell/world.ts';

export type Shell = 'bash' | 'zsh' | 'fish';

/** Prints what a shell must read to complete the program's words. */
export function completion(shell: Shell, { out }: World): number {
  out.write(writtenText(SCRIPTS[shell]));
  return 0;
}

// Each asks the program itself for the words, one a line, with a tab before what a word means; so nothing here goes stale.
// The word that is being typed is handed over only where it begins an option: it may hold quotes or backslashes, which
// each shell takes away, and puts into what it completes, by its own rules. Names with spaces need both.
const SCRIPTS: Readonly<Record<Shell, string>> = {
  bash: `# tenths completion bash >> ~/.bashrc
_tenths() {
  local IFS=$'\\n' word typed option=
  local -a before=("\${COMP_WORDS[@]:1:COMP_CWORD-1}")
  typed="\${COMP_WORDS[COMP_CWORD]#[\\"\\']}"
  typed="\${typed//\\\\/}"
  [[ "$typed" == -* ]] && option="$typed"
  COMPREPLY=()
  while IFS= read -r word; do
    word="\${word%%$'\\t'*}"
    [[ "$word" == "$typed"* ]] && COMPREPLY+=("$word")
  done < <(tenths complete -- "\${before[@]//[\\\\\\"\\']/}" "$option" 2>/dev/null)
  # Quotes what has spaces.
  compopt -o filenames
}
complete -o default -F _tenths tenths
`,
  zsh: `#compdef tenths
# tenths completion zsh > ~/.zfunc/_tenths, with fpath+=~/.zfunc before compinit
_tenths() {
  local -a words_found before=("\${(@Q)words[2,CURRENT-1]}")
  local line option=
  [[ "$PREFIX" == -* ]] && option="$PREFIX"
  while IFS= read -r line; do
    words_found+=("\${\${line%%$'\\t'*}//:/\\\\:}:\${line#*$'\\t'}")
  done < <(tenths complete -- "\${(@)before}" "$option" 2>/dev/null)
  _describe -V tenths words_found || _files
}
# Read as the file of a function this is its first call; else it is sourced.
if [[ "$funcstack[1]" == _tenths ]]; then _tenths "$@"; else compdef _tenths tenths; fi
`,
  fish: `# tenths completion fish > ~/.config/fish/completions/tenths.fish
function __tenths_complete
  set -l before (commandline -opc)[2..-1]
  set -l typed (commandline -ct | string replace -ra '[\\'"\\\\\\\\]' '')
  set -l option (string match -- '-*' $typed; or echo '')
  set -l found (tenths complete -- $before $option 2>/dev/null)
  if string match -q -- "$typed*" $found
    printf '%s\\n' $found
  else
    __fish_complete_path (commandline -ct)
  end
end
complete -c tenths -f -k -a '(__tenths_complete)'
`,
};
