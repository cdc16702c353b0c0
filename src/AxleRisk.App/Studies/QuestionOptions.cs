using System.CommandLine;

namespace AxleRisk.App.Studies;

/// <summary>What a study can be asked beyond its scenario, on the command line.</summary>
/// <typeparam name="TQuestion">The question.</typeparam>
/// <param name="Options">The options.</param>
/// <param name="Ask">Puts what the options say into the usual question.</param>
/// <param name="Check">Checks what single options cannot; null for nothing.</param>
internal sealed record QuestionOptions<TQuestion>(
    Option[] Options, Func<ParseResult, TQuestion, TQuestion> Ask, Action<System.CommandLine.Parsing.CommandResult>? Check = null);
