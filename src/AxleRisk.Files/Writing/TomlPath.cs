using System.Collections.Immutable;
using System.Text;

namespace AxleRisk.Files.Writing;

/// <summary>
/// The way to a value of a scenario file: <c>vehicle.sprung_kg</c>, <c>legs.gravel.share</c>, <c>remedies[1].change."axle.wall_mm"</c>.
/// In an array of tables a key stands for the element of that <c>name</c>; <c>legs</c> at the front is short for <c>use.legs</c>,
/// as in the names of inputs.
/// </summary>
public sealed class TomlPath : IEquatable<TomlPath>
{
    private TomlPath(ImmutableArray<PathPart> parts) => Parts = parts;

    /// <summary>The steps of the way.</summary>
    public ImmutableArray<PathPart> Parts { get; }

    /// <summary>The top of the file.</summary>
    public static TomlPath Root { get; } = new([]);

    /// <summary>The path that ends one step earlier.</summary>
    public TomlPath Parent => new(Parts[..^1]);

    /// <summary>Reads a path as <see cref="ToString"/> writes it.</summary>
    /// <exception cref="FormatException">The text is no path.</exception>
    public static TomlPath Of(string text)
    {
        var parts = ImmutableArray.CreateBuilder<PathPart>();
        for (int i = 0; i < text.Length;)
        {
            int start = i;
            switch (text[i])
            {
                case '.' when parts.Count > 0:
                    i++;
                    continue;
                case '[' when text.IndexOf(']', i) is > 0 and int close && int.TryParse(text.AsSpan(i + 1, close - i - 1), out int index)
                    && index >= 0:
                    parts.Add(new PathPart(null, index));
                    i = close + 1;
                    break;
                case '"' when text.IndexOf('"', i + 1) is > 0 and int close:
                    parts.Add(new PathPart(text[(i + 1)..close], 0));
                    i = close + 1;
                    break;
                default:
                    i = text.AsSpan(i).IndexOfAny('.', '[', '"') is >= 0 and int length ? i + length : text.Length;
                    if (i == start)
                    {
                        throw new FormatException($"'{text}' is no path");
                    }

                    parts.Add(new PathPart(text[start..i], 0));
                    break;
            }
        }

        if (parts is [{ Key: "legs" }, ..])
        {
            parts.Insert(0, new PathPart("use", 0));
        }

        return new TomlPath(parts.ToImmutable());
    }

    /// <summary>The path one key further; dots in the key are part of it.</summary>
    public TomlPath Then(string key) => new(Parts.Add(new PathPart(key, 0)));

    /// <summary>The path to an element of an array, from 0.</summary>
    public TomlPath At(int index) => new(Parts.Add(new PathPart(null, index)));

    /// <inheritdoc/>
    public bool Equals(TomlPath? other) => other is not null && Parts.SequenceEqual(other.Parts);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as TomlPath);

    /// <inheritdoc/>
    public override int GetHashCode() => Parts.Aggregate(17, (hash, part) => HashCode.Combine(hash, part));

    /// <inheritdoc/>
    public override string ToString()
    {
        var text = new StringBuilder();
        foreach (PathPart part in Parts)
        {
            if (part.Key is not string key)
            {
                text.Append('[').Append(part.Index).Append(']');
                continue;
            }

            text.Append(text.Length > 0 ? "." : "").Append(key.IndexOfAny(['.', '[', ']']) >= 0 || key.Length == 0 ? $"\"{key}\"" : key);
        }

        return text.ToString();
    }
}

/// <summary>One step of a path: a key, or where that is null the index of an element.</summary>
/// <param name="Key">The key, or the name of an element of an array of tables.</param>
/// <param name="Index">The index of an element, from 0.</param>
public readonly record struct PathPart(string? Key, int Index);
