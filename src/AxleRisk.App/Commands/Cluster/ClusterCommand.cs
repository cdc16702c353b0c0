using System.CommandLine;
using System.Text;
using System.Text.RegularExpressions;
using AxleRisk.App.Studies;
using AxleRisk.Core.Studies;
using AxleRisk.Files;
using AxleRisk.Files.Cluster;

namespace AxleRisk.App.Commands.Cluster;

/// <summary><c>axlerisk cluster</c>: a study in parts on many machines, to the same digits as one run.</summary>
internal static partial class ClusterCommand
{
    public static Command Create(Terminal terminal, RootCommand root) =>
        new("cluster", "run a study in parts on many machines: Slurm, Kubernetes, or by hand")
        {
            CreateSlurm(terminal, root), CreateKubernetes(terminal, root), CreatePart(terminal), CreateStatus(terminal),
            CreateMerge(terminal),
        };

    private static Argument<string> Folder() => new("DIR") { Description = "the folder of the study" };

    private static Option<bool> Submit(string what) => new("--submit") { Description = $"send {what} with sbatch" };

    private static Command CreateSlurm(Terminal terminal, RootCommand root)
    {
        var plan = new SharePlan(root);
        Option<bool> submit = Submit("parts and merge");
        var further = new Option<string[]>("--sbatch")
        { Description = "a further option for sbatch, such as --sbatch=--time=1:00:00", HelpName = "OPTION" };
        further.Validators.Add(result =>
        {
            if (result.Tokens.FirstOrDefault(t => !Directive().IsMatch(t.Value)) is { } wrong)
            {
                result.AddError(
                    $"--sbatch must be one option of sbatch with its value after =, such as --sbatch=--time=1:00:00, not \"{wrong.Value}\"");
            }
        });
        Command command = plan.Command("slurm", "make the folder and the batch scripts of a study for Slurm");
        command.Add(further);
        command.Add(submit);
        command.SetAction(parsed =>
        {
            SharedStudy study = plan.Make(parsed);
            var scripts = new SlurmScripts(study, Shell.Program(), plan.Threads(parsed), parsed.GetValue(further) ?? []);
            Write(study, (SlurmScripts.PartsName, scripts.Parts()), (SlurmScripts.MergeName, scripts.Merge()));
            terminal.Out.WriteLine(SharePlan.Told(study, SlurmScripts.PartsName, SlurmScripts.MergeName));
            Sent(terminal, study, null, parsed.GetValue(submit));
            return ExitCode.Done;
        });
        return command;
    }

    private static Command CreateKubernetes(Terminal terminal, RootCommand root)
    {
        var plan = new SharePlan(root);
        var image = new Option<string>("--image") { Description = "the image, which has the program", HelpName = "IMAGE", Required = true };
        var claim = new Option<string>("--claim")
        { Description = "the claim of the volume that holds the folder", HelpName = "NAME", Required = true };
        var place = new Option<string?>("--place")
        { Description = "the folder's place in the volume (default: its name)", HelpName = "PLACE" };
        claim.Validators.Add(result =>
        {
            string text = result.Tokens is [var token] ? token.Value : "";
            if (!DomainName().IsMatch(text))
            {
                result.AddError($"--claim must be a name of small letters, digits, - and ., such as studies, not \"{text}\"");
            }
        });
        place.Validators.Add(result =>
        {
            string text = result.Tokens is [var token] ? token.Value : "";
            if (text.StartsWith('/') || text.Split('/').Contains(".."))
            {
                result.AddError($"--place must be a path from the root of the volume without a / before it and without .., not \"{text}\"");
            }
        });
        Command command = plan.Command("kubernetes", "make the folder and the manifests of a study for Kubernetes");
        command.Add(image);
        command.Add(claim);
        command.Add(place);
        command.SetAction(parsed =>
        {
            SharedStudy study = plan.Make(parsed);
            var jobs = new KubernetesJobs(
                study, parsed.GetValue(image)!, parsed.GetValue(claim)!, parsed.GetValue(place) ?? Path.GetFileName(study.Folder),
                plan.Threads(parsed));
            Write(study, (KubernetesJobs.PartsName, jobs.Parts()), (KubernetesJobs.MergeName, jobs.Merge()));
            terminal.Out.WriteLine(SharePlan.Told(study, KubernetesJobs.PartsName, KubernetesJobs.MergeName));
            terminal.Out.WriteLine("To send it:");
            terminal.Out.WriteLine($"  kubectl apply -f {Shell.Quote(Path.Combine(study.Folder, KubernetesJobs.PartsName))}");
            terminal.Out.WriteLine($"  kubectl wait --for=condition=complete --timeout=-1s job/{jobs.NameOf("parts")}");
            terminal.Out.WriteLine($"  kubectl apply -f {Shell.Quote(Path.Combine(study.Folder, KubernetesJobs.MergeName))}");
            return ExitCode.Done;
        });
        return command;
    }

    private static Command CreatePart(Terminal terminal)
    {
        Argument<string> folder = Folder();
        var options = new CommonOptions(null);
        var number = new Argument<string?>("K")
        {
            Description = "the part, from 1 (default: from SLURM_ARRAY_TASK_ID, or JOB_COMPLETION_INDEX of Kubernetes)",
            Arity = ArgumentArity.ZeroOrOne,
        };
        var command = new Command("part", "do one part of a study: what the batch jobs run") { folder, number, options.Threads };
        command.SetAction(async (parsed, cancellation) =>
        {
            SharedStudy study = SharedStudy.Read(Path.GetFullPath(parsed.GetValue(folder)!));
            string? text = parsed.GetValue(number) ?? Environment.GetEnvironmentVariable("SLURM_ARRAY_TASK_ID")
                ?? (int.TryParse(Environment.GetEnvironmentVariable("JOB_COMPLETION_INDEX"), out int index) ? $"{index + 1}" : null);
            if (!(int.TryParse(text, out int part) && part >= 1 && part <= study.Parts))
            {
                throw new StudyException($"the part must be a whole number from 1 to {study.Parts}, not \"{text}\"");
            }

            int exit = await Run(parsed, options, study, part, [], terminal, cancellation);
            if (exit == ExitCode.Done)
            {
                terminal.Out.WriteLine($"Part {part} of {study.Parts} is done.");
            }

            return exit;
        });
        return command;
    }

    private static Command CreateStatus(Terminal terminal)
    {
        Argument<string> folder = Folder();
        Option<bool> submit = Submit("what is missing, and the merge,");
        var command = new Command("status", "tell which parts are done, at work, lost, and how to send again what is missing")
        { folder, submit };
        command.SetAction(parsed =>
        {
            SharedStudy study = SharedStudy.Read(Path.GetFullPath(parsed.GetValue(folder)!));
            IReadOnlyList<PartState> states = PartFolder.StatesOf(study, SharedRun.Patience);
            foreach (string line in ClusterStatus.Lines(study, states))
            {
                terminal.Out.WriteLine(line);
            }

            int[] missing = ClusterStatus.Missing(states);
            if (missing.Length > 0 && parsed.GetValue(submit))
            {
                Sent(terminal, study, PartFolder.Numbers(missing), submit: true);
            }

            return states.All(s => s.Stage == PartStage.Done) ? ExitCode.Done : ExitCode.Failed;
        });
        return command;
    }

    private static Command CreateMerge(Terminal terminal)
    {
        Argument<string> folder = Folder();
        var options = new CommonOptions(null);
        var learned = new OutputFile("--out")
        { Description = "of learn: write the scenario with what it has learned to this file", HelpName = "FILE.toml" };
        var command = new Command("merge", "join the parts of a study: the answer, as one run gives it")
        { folder, options.Threads, options.Json, options.Csv, learned };
        command.SetAction((parsed, cancellation) =>
        {
            SharedStudy study = SharedStudy.Read(Path.GetFullPath(parsed.GetValue(folder)!));
            if (parsed.GetValue(learned) is not null && study.Study != StudyBook.Learn.Name)
            {
                throw new StudyException($"--out is for {StudyBook.Learn.Name}, and this is {study.Study}: leave it out");
            }

            return Run(parsed, options, study, 0,
            [
                .. parsed.GetValue(options.Json) ? [options.Json.Name] : Array.Empty<string>(),
                .. parsed.GetValue(options.Csv) is { } csv ? [options.Csv.Name, csv] : Array.Empty<string>(),
                .. parsed.GetValue(learned) is { } path ? [learned.Name, path] : Array.Empty<string>(),
            ], terminal, cancellation);
        });
        return command;
    }

    private static Task<int> Run(
        ParseResult parsed, CommonOptions options, SharedStudy study, int part, string[] more, Terminal terminal,
        CancellationToken cancellation) =>
        AxleRiskCommand.RunAsync(
            [
                .. SharedRun.Arguments(study, part), .. more,
                .. parsed.GetValue(options.Threads) is { } threads ? [options.Threads.Name, threads] : Array.Empty<string>(),
            ], terminal, cancellation);

    private static void Write(SharedStudy study, params (string Name, string Text)[] files)
    {
        foreach ((string name, string text) in files)
        {
            WholeFile.Write(Path.Combine(study.Folder, name), Encoding.UTF8.GetBytes(text));
        }
    }

    private static void Sent(Terminal terminal, SharedStudy study, string? parts, bool submit)
    {
        if (submit)
        {
            (string sent, string merge) = Sbatch.Send(study, parts);
            terminal.Out.WriteLine($"Sent: parts as job {sent}, the merge after them as job {merge}; it writes {SlurmScripts.AnswerText}.");
            return;
        }

        terminal.Out.WriteLine("To send them:");
        foreach (string line in Sbatch.ByHand(study, parts))
        {
            terminal.Out.WriteLine($"  {line}");
        }
    }

    [GeneratedRegex(@"^--[a-z][a-z-]*(=[\w.,:/@+*\[\]()-]+)?\z")]
    private static partial Regex Directive();

    // RFC 1123's subdomain, as Kubernetes asks of names.
    [GeneratedRegex(@"^[a-z0-9]([a-z0-9.-]{0,251}[a-z0-9])?\z")]
    private static partial Regex DomainName();
}
