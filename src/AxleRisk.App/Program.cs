using AxleRisk.App;
using AxleRisk.App.Commands;
using AxleRisk.App.Text;

AxleRisk.App.Commands.Terminal terminal = AxleRisk.App.Commands.Terminal.OfProcess();
Style.IsOn = !Console.IsOutputRedirected && Environment.GetEnvironmentVariable("NO_COLOR") is null or "";
Characters.ArePlain = Characters.ArePlainBy(Environment.GetEnvironmentVariable);
try
{
    using var end = new EarlyEnd(terminal);
    return end.CodeOf(await AxleRiskCommand.RunAsync(args, terminal, end.Token));
}
catch (Exception e) when (e is not OutOfMemoryException)
{
    // Whatever was not foreseen: one line, no trace.
    terminal.Error.WriteLine($"{Product.Name}: the run failed: {Printable.Line(e.Message)}");
    return ExitCode.Failed;
}
