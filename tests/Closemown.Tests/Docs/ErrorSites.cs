using System.Text.RegularExpressions;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace Closemown.Tests.Docs;

/// <summary>One way in which something is refused: its code, its field, what is said and what to do.</summary>
internal sealed record ErrorSite(string Code, string Field, string Message, string Remedy, string Project);

/// <summary>Finds every place in the sources where a fault is made, and what it says; what is filled in stands as "…".</summary>
internal static partial class ErrorSites
{
    private const string Gap = "…";

    /// <summary>All of them, each text once a project.</summary>
    /// <param name="src">The folder of the sources.</param>
    public static IReadOnlyList<ErrorSite> In(string src)
    {
        var sites = new HashSet<ErrorSite>();
        foreach (var file in Directory.EnumerateFiles(src, "*.cs", SearchOption.AllDirectories))
        {
            var project = Path.GetRelativePath(src, file).Split(Path.DirectorySeparatorChar)[0].Replace("Closemown.", "", StringComparison.Ordinal);
            var root = CSharpSyntaxTree.ParseText(File.ReadAllText(file)).GetRoot();
            var named = root.DescendantNodes().OfType<FieldDeclarationSyntax>().Where(f => f.Modifiers.Any(SyntaxKind.ConstKeyword))
                .SelectMany(f => f.Declaration.Variables).ToDictionary(v => v.Identifier.Text, v => v.Initializer!.Value);
            foreach (var node in root.ReplaceNodes(root.DescendantNodes().OfType<IdentifierNameSyntax>().Where(i => i.Parent is ArgumentSyntax && named.ContainsKey(i.Identifier.Text)),
                (old, _) => named[old.Identifier.Text] is LiteralExpressionSyntax l ? l : old).DescendantNodes())
            {
                if (Site(node, project) is { } site && (site.Message.Length > 3 || site.Remedy.Length > 3)) sites.Add(site);
            }
        }
        return [.. sites.OrderBy(s => s.Code, StringComparer.Ordinal).ThenBy(s => s.Project, StringComparer.Ordinal).ThenBy(s => s.Message, StringComparer.Ordinal).ThenBy(s => s.Field, StringComparer.Ordinal).ThenBy(s => s.Remedy, StringComparer.Ordinal)];
    }

    private static ErrorSite? Site(SyntaxNode node, string project)
    {
        var (made, list) = node switch
        {
            ObjectCreationExpressionSyntax o => (o.Type.ToString(), o.ArgumentList),
            ImplicitObjectCreationExpressionSyntax o => ("", o.ArgumentList),
            InvocationExpressionSyntax i => (i.Expression.ToString(), i.ArgumentList),
            _ => (null, null),
        };
        if (made is null || list is null || list.Arguments is not { Count: >= 2 } a) return null;
        return made switch
        {
            "" or "EntryFault" when a.Count == 4 && Code(a[0].Expression) is { } code => new(code, Text(a[1]), Text(a[2]), Text(a[3]), project),
            "" or "BookException" when a.Count >= 3 && a[0].ToString().StartsWith("BookTrouble.", StringComparison.Ordinal) => new("book", "", Text(a[1]), Text(a[2]), project),
            "Bad" when a.Count == 3 => new("bad-value", Text(a[0]), Text(a[1]), Text(a[2]), project),
            "Fail" when a.Count == 4 && project == "Entries" => new("bad-value", Gap, $"{Gap} is not {Text(a[3])}.", $"{Gap}: write {Text(a[3])}.", project),
            "CliFault.Refused" or "TypedFault" or "ServeFault" => new("refused", "", Text(a[0]), Text(a[1]), project),
            "CliFault.Usage" => new("usage", "", Text(a[0]), Text(a[1]), project),
            "CliFault" when a.Count == 3 => new("refused", "", Text(a[1]), Text(a[2]), project),
            _ => null,
        };
    }

    /// <summary>The code of a fault; null where the first argument is none.</summary>
    private static string? Code(ExpressionSyntax first) => first switch
    {
        MemberAccessExpressionSyntax m when m.Expression.ToString() == "FaultCodes" => Kebab(m.Name.ToString()),
        LiteralExpressionSyntax l when l.IsKind(SyntaxKind.StringLiteralExpression) && CodeForm().IsMatch(l.Token.ValueText) => l.Token.ValueText,
        IdentifierNameSyntax { Identifier.Text: "Code" } => "bug",
        _ => null,
    };

    private static string Text(ArgumentSyntax argument) => Text(argument.Expression);

    private static string Text(ExpressionSyntax e) => e switch
    {
        LiteralExpressionSyntax l when l.Token.Value is string s => s,
        InterpolatedStringExpressionSyntax i => string.Concat(i.Contents.Select(c => c is InterpolatedStringTextSyntax t ? t.TextToken.ValueText : Hole(((InterpolationSyntax)c).Expression))),
        ParenthesizedExpressionSyntax p => Text(p.Expression),
        BinaryExpressionSyntax b when b.IsKind(SyntaxKind.AddExpression) => Text(b.Left) + Text(b.Right),
        ConditionalExpressionSyntax c => Either(Text(c.WhenTrue), Text(c.WhenFalse)),
        BinaryExpressionSyntax b when b.IsKind(SyntaxKind.CoalesceExpression) => Text(b.Right),
        _ => Gap,
    };

    // What is chosen inside a sentence is part of it; anything else is filled in.
    private static string Hole(ExpressionSyntax e) => e is ParenthesizedExpressionSyntax or ConditionalExpressionSyntax or LiteralExpressionSyntax ? Text(e) : Gap;

    private static string Either(string a, string b) => a == b ? a : a.Length == 0 || b.Length == 0 ? $"[{a}{b}]" : $"{a} / {b}";

    private static string Kebab(string name) => string.Concat(name.Select((c, i) => char.IsUpper(c) ? (i > 0 ? "-" : "") + char.ToLowerInvariant(c) : c.ToString()));

    [GeneratedRegex("^[a-z]+(-[a-z]+)*$")]
    private static partial Regex CodeForm();
}
