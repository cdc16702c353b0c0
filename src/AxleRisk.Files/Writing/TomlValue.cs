using System.Collections.Immutable;

namespace AxleRisk.Files.Writing;

/// <summary>A value to be written into a scenario file.</summary>
public abstract record TomlValue
{
    /// <summary>The value as TOML, on one line.</summary>
    public abstract string Write();

    /// <summary>A number.</summary>
    public static Number Of(double number) => new(number);

    /// <summary>A text.</summary>
    public static Text Of(string text) => new(text);

    /// <summary>A list.</summary>
    public static List ListOf(params IEnumerable<TomlValue> items) => new([.. items]);

    /// <summary>A table with its keys in this order.</summary>
    public static Table TableOf(params IEnumerable<(string Key, TomlValue Value)> entries) =>
        new([.. entries.Select(e => new TomlItem(e.Key, e.Value))]);

    /// <summary>A number.</summary>
    /// <param name="Value">The number.</param>
    /// <param name="Literal">The number as the user wrote it, to be kept where it is good TOML; null for the shortest that reads
    /// back the same.</param>
    public sealed record Number(double Value, string? Literal = null) : TomlValue
    {
        /// <inheritdoc/>
        public override string Write() => Literal is not null && TomlText.IsNumber(Literal) ? Literal : TomlText.OfNumber(Value);

        /// <summary>Numbers are the same where their values are, however they are written.</summary>
        public bool Equals(Number? other) => other is not null && Value.Equals(other.Value);

        /// <inheritdoc/>
        public override int GetHashCode() => Value.GetHashCode();
    }

    /// <summary>A text.</summary>
    /// <param name="Value">The text.</param>
    public sealed record Text(string Value) : TomlValue
    {
        /// <inheritdoc/>
        public override string Write() => TomlText.Quote(Value);
    }

    /// <summary>A list.</summary>
    /// <param name="Items">Its items.</param>
    public sealed record List(ImmutableArray<TomlValue> Items) : TomlValue
    {
        /// <inheritdoc/>
        public override string Write() => $"[{string.Join(", ", Items.Select(i => i.Write()))}]";

        /// <summary>Lists are the same where their items are.</summary>
        public bool Equals(List? other) => other is not null && Items.SequenceEqual(other.Items);

        /// <inheritdoc/>
        public override int GetHashCode() => Items.Length;
    }

    /// <summary>A table.</summary>
    /// <param name="Items">Its keys and values.</param>
    public sealed record Table(ImmutableArray<TomlItem> Items) : TomlValue
    {
        /// <summary>The value of a key; null where it has none.</summary>
        public TomlValue? this[string key] => Items.FirstOrDefault(i => i.Key == key)?.Value;

        /// <inheritdoc/>
        public override string Write() =>
            Items.IsEmpty ? "{}" : $"{{ {string.Join(", ", Items.Select(i => $"{TomlText.Key(i.Key)} = {i.Value.Write()}"))} }}";

        /// <summary>Tables are the same where they hold the same, in whatever order.</summary>
        public bool Equals(Table? other) =>
            other is not null && Items.Length == other.Items.Length && Items.All(i => i.Value.Equals(other[i.Key]));

        /// <inheritdoc/>
        public override int GetHashCode() => Items.Length;
    }

    /// <summary>What no scenario holds: a truth value, a date or a time.</summary>
    /// <param name="Literal">As it stands in the file.</param>
    public sealed record Other(string Literal) : TomlValue
    {
        /// <inheritdoc/>
        public override string Write() => Literal;
    }
}

/// <summary>A key of a table and its value.</summary>
/// <param name="Key">The key.</param>
/// <param name="Value">The value.</param>
public sealed record TomlItem(string Key, TomlValue Value);
