using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace AxleRisk.Benchmarks.Mutants;

/// <summary>Every one-line error of a few plain kinds that could be planted in a file.</summary>
internal sealed class MutantFinder(string file, SemanticModel model) : CSharpSyntaxWalker
{
    // A list of more numbers than this is a table of data.
    private const int LongestList = 6;

    private static readonly Dictionary<SyntaxKind, (string Kind, string[] Operators)> Binary = new()
    {
        [SyntaxKind.AddExpression] = ("arithmetic", ["-"]),
        [SyntaxKind.SubtractExpression] = ("arithmetic", ["+"]),
        [SyntaxKind.MultiplyExpression] = ("arithmetic", ["/"]),
        [SyntaxKind.DivideExpression] = ("arithmetic", ["*"]),
        [SyntaxKind.LessThanExpression] = ("comparison", ["<=", ">"]),
        [SyntaxKind.LessThanOrEqualExpression] = ("comparison", ["<", ">="]),
        [SyntaxKind.GreaterThanExpression] = ("comparison", [">=", "<"]),
        [SyntaxKind.GreaterThanOrEqualExpression] = ("comparison", [">", "<="]),
        [SyntaxKind.EqualsExpression] = ("comparison", ["!="]),
        [SyntaxKind.NotEqualsExpression] = ("comparison", ["=="]),
        [SyntaxKind.LogicalAndExpression] = ("logic", ["||"]),
        [SyntaxKind.LogicalOrExpression] = ("logic", ["&&"]),
    };

    private static readonly Dictionary<SyntaxKind, string> Assignment = new()
    {
        [SyntaxKind.AddAssignmentExpression] = "-=",
        [SyntaxKind.SubtractAssignmentExpression] = "+=",
        [SyntaxKind.MultiplyAssignmentExpression] = "/=",
        [SyntaxKind.DivideAssignmentExpression] = "*=",
    };

    private static readonly Dictionary<string, string> Twins = new()
    {
        ["Min"] = "Max",
        ["Max"] = "Min",
        ["Cumulative"] = "Upper",
        ["Upper"] = "Cumulative",
        ["Floor"] = "Ceiling",
        ["Ceiling"] = "Floor",
    };

    /// <summary>What was found.</summary>
    public List<Mutant> Found { get; } = [];

    /// <inheritdoc/>
    public override void VisitBinaryExpression(BinaryExpressionSyntax node)
    {
        if (Binary.TryGetValue(node.Kind(), out (string Kind, string[] Operators) change)
            && model.GetTypeInfo(node).Type?.SpecialType != SpecialType.System_String)
        {
            foreach (string op in change.Operators)
            {
                Add(node, change.Kind, $"{node.Left} {op} {node.Right}");
            }
        }

        base.VisitBinaryExpression(node);
    }

    /// <inheritdoc/>
    public override void VisitPrefixUnaryExpression(PrefixUnaryExpressionSyntax node)
    {
        if (node.IsKind(SyntaxKind.UnaryMinusExpression) || node.IsKind(SyntaxKind.LogicalNotExpression))
        {
            Add(node, "sign or not left out", node.Operand.ToString());
        }

        base.VisitPrefixUnaryExpression(node);
    }

    /// <inheritdoc/>
    public override void VisitConditionalExpression(ConditionalExpressionSyntax node)
    {
        Add(node, "choice turned", $"{node.Condition} ? {node.WhenFalse} : {node.WhenTrue}");
        base.VisitConditionalExpression(node);
    }

    /// <inheritdoc/>
    public override void VisitLiteralExpression(LiteralExpressionSyntax node)
    {
        bool inTable = node.Ancestors()
            .Any(a => a is CollectionExpressionSyntax { Elements.Count: > LongestList } or InitializerExpressionSyntax
            { Expressions.Count: > LongestList });
        if (inTable)
        {
            return;
        }

        string? after = node.Token.Value switch
        {
            int i => $"{node} + 1",
            double d => d == 0 ? "1.0" : $"{node} * 1.1",
            float f => f == 0 ? "1f" : $"{node} * 1.1f",
            _ => null,
        };
        if (after is not null)
        {
            Add(node, "number", after);
        }
    }

    /// <inheritdoc/>
    public override void VisitInvocationExpression(InvocationExpressionSyntax node)
    {
        if (node.Expression is MemberAccessExpressionSyntax { Name.Identifier.Text: var name } call)
        {
            if (Twins.TryGetValue(name, out string? twin))
            {
                Add(node, "twin function", $"{call.Expression}.{twin}{node.ArgumentList}");
            }
            else if (name == "Sqrt" && node.ArgumentList.Arguments is [var only])
            {
                Add(node, "function left out", only.ToString());
            }
        }

        base.VisitInvocationExpression(node);
    }

    /// <inheritdoc/>
    public override void VisitExpressionStatement(ExpressionStatementSyntax node)
    {
        if (node.Expression is AssignmentExpressionSyntax assignment && Assignment.TryGetValue(assignment.Kind(), out string? op))
        {
            Add(node, "sum or product turned", $"{assignment.Left} {op} {assignment.Right};");
        }

        if (node.Expression is InvocationExpressionSyntax or AssignmentExpressionSyntax
            { RawKind: not (int)SyntaxKind.SimpleAssignmentExpression })
        {
            Add(node, "statement left out", "");
        }

        base.VisitExpressionStatement(node);
    }

    // Neither texts nor messages of errors, nor what must be known to the compiler.
    /// <inheritdoc/>
    public override void VisitThrowStatement(ThrowStatementSyntax node)
    {
    }

    /// <inheritdoc/>
    public override void VisitThrowExpression(ThrowExpressionSyntax node)
    {
    }

    /// <inheritdoc/>
    public override void VisitInterpolatedStringExpression(InterpolatedStringExpressionSyntax node)
    {
    }

    /// <inheritdoc/>
    public override void VisitAttributeList(AttributeListSyntax node)
    {
    }

    /// <inheritdoc/>
    public override void VisitEnumDeclaration(EnumDeclarationSyntax node)
    {
    }

    private void Add(SyntaxNode node, string kind, string after)
    {
        if (!model.GetConstantValue(node).HasValue || node is LiteralExpressionSyntax)
        {
            Found.Add(new(file, node.Span, node.GetLocation().GetLineSpan().StartLinePosition.Line + 1, kind, node.ToString(), after,
                node is StatementSyntax));
        }
    }
}
