namespace AxleRisk.App.Commands;

/// <summary>What a shell needs to complete the program's command line: it asks the program, which knows its commands.</summary>
internal static class CompletionScripts
{
    // The word under way goes with a + before it: some shells drop an empty word.
    private const string Bash = """
        # Completion of axlerisk for bash. Use: source <(axlerisk completions bash)
        _axlerisk() {
            local found
            COMPREPLY=()
            while IFS= read -r found; do
                COMPREPLY+=("$(printf '%q' "$found")")
            done < <("${COMP_WORDS[0]}" suggest -- "${COMP_WORDS[@]:1:COMP_CWORD-1}" "+${COMP_WORDS[COMP_CWORD]}" 2>/dev/null)
            if [[ ${#COMPREPLY[@]} -eq 1 && ${COMPREPLY[0]} == *[/=] ]]; then compopt -o nospace; fi
        }
        complete -F _axlerisk axlerisk
        """;

    private const string Zsh = """
        #compdef axlerisk
        # Completion of axlerisk for zsh. Use: source <(axlerisk completions zsh), or keep it as _axlerisk in a folder of fpath.
        _axlerisk() {
            local -a found
            found=("${(@f)$("${words[1]}" suggest -- "${(@)words[2,CURRENT-1]}" "+${words[CURRENT]}" 2>/dev/null)}")
            compadd -- ${found:#*[/=]}
            compadd -S '' -- ${(M)found:#*[/=]}
        }
        if [[ ${funcstack[1]} == _axlerisk ]]; then _axlerisk "$@"; else compdef _axlerisk axlerisk; fi
        """;

    private const string Fish = """
        # Completion of axlerisk for fish. Use: axlerisk completions fish > ~/.config/fish/completions/axlerisk.fish
        function __axlerisk_found
            set -l words (commandline -opc)
            set -l word (commandline -ct)
            $words[1] suggest -- $words[2..-1] "+$word" 2>/dev/null
        end
        complete -c axlerisk -f -a '(__axlerisk_found)'
        """;

    private const string PowerShell = """
        # Completion of axlerisk for PowerShell. Use: axlerisk completions powershell | Out-String | Invoke-Expression
        Register-ArgumentCompleter -Native -CommandName axlerisk -ScriptBlock {
            param($word, $line, $cursor)
            $words = @($line.CommandElements | Where-Object { $_.Extent.EndOffset -lt $cursor } | ForEach-Object { $_.ToString() })
            $before = @($words | Select-Object -Skip 1)
            & $words[0] suggest '--' @before "+$word" 2>$null | ForEach-Object {
                [System.Management.Automation.CompletionResult]::new($_, $_, 'ParameterValue', $_)
            }
        }
        """;

    /// <summary>The shells there is a script for.</summary>
    public static IReadOnlyList<string> Shells { get; } = ["bash", "zsh", "fish", "powershell"];

    /// <summary>The script for one of <see cref="Shells"/>.</summary>
    public static string Of(string shell) => shell switch
    {
        "bash" => Bash,
        "zsh" => Zsh,
        "fish" => Fish,
        _ => PowerShell,
    };
}
