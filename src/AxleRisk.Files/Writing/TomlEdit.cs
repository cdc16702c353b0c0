using System.Collections.Immutable;

namespace AxleRisk.Files.Writing;

/// <summary>One change of a scenario's text.</summary>
/// <param name="Path">What it changes.</param>
public abstract record TomlEdit(TomlPath Path)
{
    /// <summary>States a value, in place of the one that stands there or anew.</summary>
    /// <param name="Path">Where it stands.</param>
    /// <param name="Value">The value.</param>
    public sealed record Set(TomlPath Path, TomlValue Value) : TomlEdit(Path);

    /// <summary>Takes a key, a table or an element of an array out; does nothing where it is not there.</summary>
    /// <param name="Path">What is taken out.</param>
    public sealed record Remove(TomlPath Path) : TomlEdit(Path);

    /// <summary>Adds a table at the end of an array of tables, which is made where it is not there.</summary>
    /// <param name="Path">The array.</param>
    /// <param name="Table">The table.</param>
    public sealed record Append(TomlPath Path, TomlValue.Table Table) : TomlEdit(Path);

    /// <summary>Lets an element of an array change places with the one behind it; the comments above each go with it.</summary>
    /// <param name="Path">The array.</param>
    /// <param name="Index">The first of the two, from 0.</param>
    public sealed record Swap(TomlPath Path, int Index) : TomlEdit(Path);

    /// <summary>Writes the note of a value, the comment behind it, in place of the one that stands there.</summary>
    /// <param name="Path">Where the value stands.</param>
    /// <param name="Text">The note; an empty one takes it away.</param>
    public sealed record Note(TomlPath Path, string Text) : TomlEdit(Path);
}

/// <summary>A change as the user sees it: a name, and what it comes to in the text, done together or not at all.</summary>
/// <param name="Name">What was changed, short: <c>axle.wall_mm</c>.</param>
/// <param name="Steps">The changes of the text, in order.</param>
public sealed record ScenarioEdit(string Name, ImmutableArray<TomlEdit> Steps)
{
    /// <summary>States one value.</summary>
    public static ScenarioEdit Set(TomlPath path, TomlValue value) => new(path.ToString(), [new TomlEdit.Set(path, value)]);

    /// <summary>Takes one thing out, so that its default holds.</summary>
    public static ScenarioEdit Remove(TomlPath path) => new(path.ToString(), [new TomlEdit.Remove(path)]);

    /// <summary>Adds a table to an array of tables.</summary>
    public static ScenarioEdit Append(TomlPath path, TomlValue.Table table) => new(path.ToString(), [new TomlEdit.Append(path, table)]);
}

/// <summary>A text cannot be changed as asked; the message says why.</summary>
public sealed class EditException : Exception
{
    /// <summary>Creates the exception with a message for the user.</summary>
    public EditException(string message)
        : base(message)
    {
    }
}
