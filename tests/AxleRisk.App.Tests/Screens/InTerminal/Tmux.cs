using System.Diagnostics;
using System.Text.RegularExpressions;
using AxleRisk.App.Tests.Commands;
using Xunit;

namespace AxleRisk.App.Tests.Screens.InTerminal;

/// <summary>
/// The program as a process of its own in a real terminal of 80 by 24 characters: a server of tmux that nobody else uses.
/// </summary>
internal sealed class Tmux : IDisposable
{
    private static readonly TimeSpan Poll = TimeSpan.FromMilliseconds(40);

    private readonly string server = $"axlerisk-test-{Environment.ProcessId}-{Guid.NewGuid():N}";
    private readonly Stopwatch age = Stopwatch.StartNew();

    /// <summary>Starts the program; behind its end stands its exit code.</summary>
    /// <param name="arguments">Arguments without quotes in them.</param>
    public Tmux(params string[] arguments)
    {
        string words = string.Join(' ', TestedProgram.Words.Concat(arguments).Select(w => $"'{w}'"));
        Call("-f", "/dev/null", "new-session", "-d", "-x", "80", "-y", "24", $"{words}; echo \"exit code $?\"; exec cat");
    }

    /// <summary>Whether tmux is here.</summary>
    public static bool IsHere { get; } = OperatingSystem.IsLinux()
        && (Environment.GetEnvironmentVariable("PATH") ?? "").Split(':')
            .Any(folder => folder.Length > 0 && File.Exists(Path.Combine(folder, "tmux")));

    /// <summary>What the terminal shows.</summary>
    public string Screen => Call("capture-pane", "-p");

    /// <summary>Presses keys by the names tmux has for them: <c>Down</c>, <c>C-s</c>, <c>q</c>.</summary>
    public void Press(params string[] keys) => Call(["send-keys", .. keys]);

    /// <summary>Waits until the screen shows something.</summary>
    /// <returns>The screen that does.</returns>
    public string Until(string text) => Until(screen => screen.Contains(text, StringComparison.Ordinal), text);

    /// <summary>Waits until a line of the screen is of a form.</summary>
    /// <param name="pattern">A regular expression.</param>
    /// <param name="what">What it is.</param>
    public string UntilMatch(string pattern, string what) => Until(screen => Regex.IsMatch(screen, pattern), what);

    /// <summary>Presses a key until a line shows something; each time waits for that line to change.</summary>
    /// <remarks>Any other change, such as a result that comes in, is no answer: a key still on its way would go past the aim.</remarks>
    /// <param name="key">The key.</param>
    /// <param name="mark">A regular expression for the one line the key changes, or moves to another.</param>
    /// <param name="text">What that line comes to show.</param>
    public void PressUntil(string key, string mark, string text)
    {
        string Marked(string screen) => Array.Find(screen.Split('\n'), l => Regex.IsMatch(l, mark)) ?? "";

        for (string line = Marked(Screen); !line.Contains(text, StringComparison.Ordinal);)
        {
            Press(key);
            string before = line;
            line = Marked(Until(screen => Marked(screen) is { Length: > 0 } now && now != before,
                $"an answer to {key} on the way to: {text}"));
        }
    }

    /// <summary>Waits until the screen is as asked.</summary>
    public string Until(Func<string, bool> shown, string what)
    {
        while (true)
        {
            string screen = Screen;
            if (shown(screen))
            {
                return screen;
            }

            // One limit for the whole script, two processes and a terminal: a busy machine is slow in one step or another, not in all.
            Assert.True(age.Elapsed < 2 * Patience.Longest, $"the terminal did not come to show: {what}\n{screen}");
            Thread.Sleep(Poll);
        }
    }

    /// <summary>The program's process.</summary>
    public int ProgramId
    {
        get
        {
            // The shell that started it waits for it, so it is the only child of that.
            string shell = Call("display-message", "-p", "#{pane_pid}").Trim();
            return int.Parse(File.ReadAllText($"/proc/{shell}/task/{shell}/children").Trim());
        }
    }

    /// <summary>Whether the program is stopped as a shell stops a job (proc(5): state T).</summary>
    public bool IsStopped => File.ReadAllText($"/proc/{ProgramId}/stat").Split(')')[^1].TrimStart()[0] == 'T';

    /// <summary>Sends the program a signal by its name.</summary>
    public void Send(string signal)
    {
        using var kill = Process.Start("kill", [$"-{signal}", $"{ProgramId}"]);
        kill.WaitForExit();
    }

    /// <summary>Ends the program at once, with no chance to do anything.</summary>
    public void Kill()
    {
        using var program = Process.GetProcessById(ProgramId);
        program.Kill();
        Until("exit code 137"); // 128 + SIGKILL
    }

    /// <inheritdoc/>
    public void Dispose() => Call("kill-server");

    private string Call(params string[] words)
    {
        var start = new ProcessStartInfo("tmux", ["-L", server, .. words]) { RedirectStandardOutput = true };

        // The other tests draw without a terminal, and the surroundings of the tests are not the reader's.
        foreach (string name in new[] { "DisableRealDriverIO", "NO_COLOR", "TMUX" })
        {
            start.Environment.Remove(name);
        }

        start.Environment["TERM"] = "xterm-256color";
        start.Environment["LC_ALL"] = "C.UTF-8";
        using var process = Process.Start(start)!;
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return output;
    }
}
