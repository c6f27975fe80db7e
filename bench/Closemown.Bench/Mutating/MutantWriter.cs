using System.Globalization;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace Closemown.Bench.Mutating;

/// <summary>Puts every mutant into the source at once, each behind a switch: <c>(Mutation.Is(7) ? a &lt;= b : a &lt; b)</c>, so that all are compiled once.</summary>
/// <remarks>
/// Left alone: messages, attributes, constants and patterns (they must be constant), guards and throws, and what runs once when a class is first
/// used (tables), as a switch cannot reach it afterwards.
/// </remarks>
internal sealed class MutantWriter(string file, Func<int> next, IReadOnlySet<int> leftOut) : CSharpSyntaxRewriter
{
    /// <summary>Marks the node of a mutant in the written tree.</summary>
    public const string Mark = "mutant";

    private static readonly Dictionary<SyntaxKind, SyntaxKind[]> Swaps = new()
    {
        [SyntaxKind.LessThanExpression] = [SyntaxKind.LessThanOrEqualExpression],
        [SyntaxKind.LessThanOrEqualExpression] = [SyntaxKind.LessThanExpression],
        [SyntaxKind.GreaterThanExpression] = [SyntaxKind.GreaterThanOrEqualExpression],
        [SyntaxKind.GreaterThanOrEqualExpression] = [SyntaxKind.GreaterThanExpression],
        [SyntaxKind.EqualsExpression] = [SyntaxKind.NotEqualsExpression],
        [SyntaxKind.NotEqualsExpression] = [SyntaxKind.EqualsExpression],
        [SyntaxKind.LogicalAndExpression] = [SyntaxKind.LogicalOrExpression],
        [SyntaxKind.LogicalOrExpression] = [SyntaxKind.LogicalAndExpression],
        [SyntaxKind.AddExpression] = [SyntaxKind.SubtractExpression],
        [SyntaxKind.SubtractExpression] = [SyntaxKind.AddExpression],
        [SyntaxKind.MultiplyExpression] = [SyntaxKind.DivideExpression],
        [SyntaxKind.DivideExpression] = [SyntaxKind.MultiplyExpression],
        [SyntaxKind.ModuloExpression] = [SyntaxKind.MultiplyExpression],
    };

    /// <summary>The mutants that were put in.</summary>
    public List<Mutant> Mutants { get; } = [];

    public override SyntaxNode? VisitAttributeList(AttributeListSyntax node) => node;

    public override SyntaxNode? VisitInterpolatedStringExpression(InterpolatedStringExpressionSyntax node) => node;

    public override SyntaxNode? VisitThrowStatement(ThrowStatementSyntax node) => node;

    public override SyntaxNode? VisitThrowExpression(ThrowExpressionSyntax node) => node;

    public override SyntaxNode? VisitEnumDeclaration(EnumDeclarationSyntax node) => node;

    public override SyntaxNode? VisitParameter(ParameterSyntax node) => node;

    public override SyntaxNode? VisitCaseSwitchLabel(CaseSwitchLabelSyntax node) => node;

    public override SyntaxNode? VisitConstantPattern(ConstantPatternSyntax node) => node;

    public override SyntaxNode? VisitRelationalPattern(RelationalPatternSyntax node) => node;

    public override SyntaxNode? VisitFieldDeclaration(FieldDeclarationSyntax node) =>
        node.Modifiers.Any(m => m.Kind() is SyntaxKind.ConstKeyword or SyntaxKind.StaticKeyword) ? node : base.VisitFieldDeclaration(node);

    public override SyntaxNode? VisitPropertyDeclaration(PropertyDeclarationSyntax node) =>
        node.Initializer is not null && node.Modifiers.Any(SyntaxKind.StaticKeyword) ? node : base.VisitPropertyDeclaration(node);

    public override SyntaxNode? VisitConstructorDeclaration(ConstructorDeclarationSyntax node) =>
        node.Modifiers.Any(SyntaxKind.StaticKeyword) ? node : base.VisitConstructorDeclaration(node);

    public override SyntaxNode? VisitLocalDeclarationStatement(LocalDeclarationStatementSyntax node) => node.IsConst ? node : base.VisitLocalDeclarationStatement(node);

    public override SyntaxNode? VisitMethodDeclaration(MethodDeclarationSyntax node) =>
        node.Identifier.Text is "ToString" or "GetHashCode" ? node : base.VisitMethodDeclaration(node);

    public override SyntaxNode? VisitBinaryExpression(BinaryExpressionSyntax node)
    {
        var inner = (BinaryExpressionSyntax)base.VisitBinaryExpression(node)!;
        if (!Swaps.TryGetValue(node.Kind(), out var others) || IsText(node.Left) || IsText(node.Right)) return inner;
        ExpressionSyntax made = inner;
        foreach (var other in others) made = Choice(node, SyntaxFactory.BinaryExpression(other, inner.Left, Sign(other), inner.Right), node.WithOperatorToken(Sign(other)), made);
        return made;
    }

    public override SyntaxNode? VisitPrefixUnaryExpression(PrefixUnaryExpressionSyntax node)
    {
        var inner = (PrefixUnaryExpressionSyntax)base.VisitPrefixUnaryExpression(node)!;
        return node.Kind() is SyntaxKind.LogicalNotExpression or SyntaxKind.UnaryMinusExpression && node.Operand is not LiteralExpressionSyntax
            ? Choice(node, inner.Operand, node.Operand, inner) : inner;
    }

    public override SyntaxNode? VisitConditionalExpression(ConditionalExpressionSyntax node)
    {
        var inner = (ConditionalExpressionSyntax)base.VisitConditionalExpression(node)!;
        return IsText(node.WhenTrue) || IsText(node.WhenFalse) ? inner : inner.WithCondition(Negated(node.Condition, inner.Condition));
    }

    public override SyntaxNode? VisitIfStatement(IfStatementSyntax node)
    {
        if (node.Statement is ThrowStatementSyntax) return node;
        var inner = (IfStatementSyntax)base.VisitIfStatement(node)!;
        return inner.WithCondition(Negated(node.Condition, inner.Condition));
    }

    public override SyntaxNode? VisitLiteralExpression(LiteralExpressionSyntax node)
    {
        if (node.IsKind(SyntaxKind.TrueLiteralExpression)) return Choice(node, SyntaxFactory.LiteralExpression(SyntaxKind.FalseLiteralExpression), null, node);
        if (node.IsKind(SyntaxKind.FalseLiteralExpression)) return Choice(node, SyntaxFactory.LiteralExpression(SyntaxKind.TrueLiteralExpression), null, node);
        return node.Token.Value switch
        {
            int i and < int.MaxValue => Choice(node, Number((i + 1).ToString(CultureInfo.InvariantCulture)), null, node),
            double d => Choice(node, Number($"({(d + 1).ToString("R", CultureInfo.InvariantCulture)}d)"), null, node),
            _ => node,
        };
    }

    public override SyntaxNode? VisitExpressionStatement(ExpressionStatementSyntax node)
    {
        if (node.Expression is InvocationExpressionSyntax call && call.Expression.ToString().Contains("ThrowIf", StringComparison.Ordinal)) return node;
        var inner = (ExpressionStatementSyntax)base.VisitExpressionStatement(node)!;
        if (node.Expression is not (InvocationExpressionSyntax or AssignmentExpressionSyntax { RawKind: not (int)SyntaxKind.SimpleAssignmentExpression }) || node.Parent is not BlockSyntax) return inner;
        var id = Taken(node, node.ToString(), "(left out)");
        return id is null ? inner
            : SyntaxFactory.IfStatement(SyntaxFactory.PrefixUnaryExpression(SyntaxKind.LogicalNotExpression, Alive(id.Value)), SyntaxFactory.Block(inner.WithoutTrivia()))
                .WithTriviaFrom(inner).WithAdditionalAnnotations(new SyntaxAnnotation(Mark, id.Value.ToString(CultureInfo.InvariantCulture)));
    }

    private ExpressionSyntax Negated(ExpressionSyntax was, ExpressionSyntax inner)
    {
        // Comparisons have mutants of their own.
        if (was is BinaryExpressionSyntax or PrefixUnaryExpressionSyntax or LiteralExpressionSyntax) return inner;
        return Choice(was, SyntaxFactory.PrefixUnaryExpression(SyntaxKind.LogicalNotExpression, SyntaxFactory.ParenthesizedExpression(inner.WithoutTrivia())), null, inner);
    }

    private ExpressionSyntax Choice(ExpressionSyntax was, ExpressionSyntax mutated, ExpressionSyntax? shown, ExpressionSyntax inner)
    {
        if (Taken(was, was.ToString(), (shown ?? mutated).ToString()) is not { } id) return inner;
        return SyntaxFactory.ParenthesizedExpression(SyntaxFactory.ConditionalExpression(Alive(id), Spaced(SyntaxKind.QuestionToken), Closed(mutated), Spaced(SyntaxKind.ColonToken), Closed(inner)))
            .WithTriviaFrom(inner).WithAdditionalAnnotations(new SyntaxAnnotation(Mark, id.ToString(CultureInfo.InvariantCulture)));
    }

    private static ExpressionSyntax Alive(int id) => SyntaxFactory.ParseExpression($"global::Closemown.Mutation.Is({id})");

    private static ParenthesizedExpressionSyntax Closed(ExpressionSyntax e) => SyntaxFactory.ParenthesizedExpression(e.WithoutTrivia());

    private static SyntaxToken Spaced(SyntaxKind kind) => SyntaxFactory.Token(SyntaxFactory.TriviaList(SyntaxFactory.Space), kind, SyntaxFactory.TriviaList(SyntaxFactory.Space));

    private int? Taken(SyntaxNode node, string was, string becomes)
    {
        var id = next();
        if (leftOut.Contains(id)) return null;
        Mutants.Add(new(id, file, node.GetLocation().GetLineSpan().StartLinePosition.Line + 1, was, becomes));
        return id;
    }

    private static LiteralExpressionSyntax Number(string text) =>
        SyntaxFactory.LiteralExpression(SyntaxKind.NumericLiteralExpression, SyntaxFactory.ParseToken(text.Trim('(', ')')));

    private static SyntaxToken Sign(SyntaxKind kind) =>
        Spaced(SyntaxFactory.BinaryExpression(kind, SyntaxFactory.IdentifierName("a"), SyntaxFactory.IdentifierName("b")).OperatorToken.Kind());

    private static bool IsText(ExpressionSyntax e) => e is InterpolatedStringExpressionSyntax || (e is LiteralExpressionSyntax l && l.IsKind(SyntaxKind.StringLiteralExpression));
}
