namespace AxleRisk.Core.Studies;

/// <summary>What was asked does not fit the scenario or the study; the message tells the user what would.</summary>
/// <param name="message">The message.</param>
public sealed class StudyException(string message) : Exception(message);
