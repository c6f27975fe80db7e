using System.Diagnostics;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace Closemown.Bench.Mutating;

/// <summary>A copy of the sources in which one project holds all its mutants, built with its tests.</summary>
internal sealed class MutatedProject
{
    private const string Switch = """
        namespace Closemown;

        /// <summary>Which mutant is alive.</summary>
        internal static class Mutation
        {
            public static int Alive;
            public static bool[]? Reached;

            public static bool Is(int id)
            {
                if (Reached is { } reached) reached[id] = true;
                return Alive == id;
            }
        }
        """;

    private const string Usings = "global using System; global using System.IO; global using System.Linq; global using System.Net.Http; global using System.Threading; global using System.Threading.Tasks; global using System.Collections.Generic;";

    private readonly string root;
    private readonly string project;
    private readonly IReadOnlyList<string> tests;
    private readonly string bin;

    /// <param name="root">The folder of the solution.</param>
    /// <param name="project">The project, "Closemown.Entries".</param>
    /// <param name="tests">The projects of its tests.</param>
    public MutatedProject(string root, string project, IReadOnlyList<string> tests)
    {
        (this.root, this.project, this.tests) = (root, project, tests);
        Copy = Path.Combine(root, "artifacts", "mutants", project);
        bin = Path.Combine(root, "artifacts", "bin", tests[0], "release");
    }

    /// <summary>The folder of the copy.</summary>
    public string Copy { get; }

    /// <summary>The built tests of the copy.</summary>
    public string Built(string test) => Path.Combine(Copy, "artifacts", "bin", test, "release", test + ".dll");

    /// <summary>Writes, compiles and builds; gives the mutants that can be compiled.</summary>
    public List<Mutant> Build()
    {
        if (!File.Exists(Path.Combine(bin, project + ".dll"))) throw new InvalidOperationException($"Build {tests[0]} in Release first.");
        MakeCopy();
        var leftOut = new HashSet<int>();
        while (true)
        {
            var (trees, mutants) = Write(leftOut);
            var bad = Wrong(trees, mutants);
            if (bad.Count == 0)
            {
                foreach (var (path, tree) in trees) File.WriteAllText(Path.Combine(Copy, "src", project, path), tree.ToString());
                File.WriteAllText(Path.Combine(Copy, "src", project, "Mutation.cs"), Switch);
                foreach (var test in tests) Run("dotnet", ["build", Path.Combine(Copy, "tests", test), "-c", "Release", "-v", "quiet", "-nologo", "-p:RunAnalyzers=false", "-p:TreatWarningsAsErrors=false"]);
                return mutants;
            }
            leftOut.UnionWith(bad);
        }
    }

    private void MakeCopy()
    {
        if (Directory.Exists(Copy)) Directory.Delete(Copy, recursive: true);
        foreach (var file in Run("git", ["-C", root, "ls-files", "-z", "--", "src", "tests", "demo", "docs", "build", "*.props", "*.json", "*.slnx", ".editorconfig", "BannedSymbols.txt", "closemown"]).Split('\0', StringSplitOptions.RemoveEmptyEntries))
        {
            var to = Path.Combine(Copy, file);
            Directory.CreateDirectory(Path.GetDirectoryName(to)!);
            if (File.Exists(Path.Combine(root, file))) File.Copy(Path.Combine(root, file), to, overwrite: true);
        }
    }

    private (Dictionary<string, SyntaxTree>, List<Mutant>) Write(IReadOnlySet<int> leftOut)
    {
        var (trees, mutants, last) = (new Dictionary<string, SyntaxTree>(), new List<Mutant>(), 0);
        var src = Path.Combine(root, "src", project);
        foreach (var path in Directory.EnumerateFiles(src, "*.cs", SearchOption.AllDirectories).Select(p => Path.GetRelativePath(src, p)).Where(p => !p.StartsWith("obj", StringComparison.Ordinal)).Order(StringComparer.Ordinal))
        {
            var tree = CSharpSyntaxTree.ParseText(File.ReadAllText(Path.Combine(src, path)), path: path);
            var writer = new MutantWriter(path, () => ++last, leftOut);
            trees[path] = tree.WithRootAndOptions(writer.Visit(tree.GetRoot()), tree.Options);
            mutants.AddRange(writer.Mutants);
        }
        return (trees, mutants);
    }

    /// <summary>The mutants that stand where the compiler finds an error.</summary>
    private HashSet<int> Wrong(Dictionary<string, SyntaxTree> trees, List<Mutant> mutants)
    {
        var options = new CSharpCompilationOptions(OutputKind.DynamicallyLinkedLibrary, allowUnsafe: true, nullableContextOptions: NullableContextOptions.Enable, checkOverflow: true);
        var references = AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!.ToString()!.Split(Path.PathSeparator).Where(p => !Path.GetFileName(p).StartsWith("Closemown", StringComparison.Ordinal))
            .Concat(Directory.EnumerateFiles(bin, "Closemown.*.dll").Where(p => Path.GetFileNameWithoutExtension(p) != project)).Concat(Directory.EnumerateFiles(bin, "*Sqlite*.dll")).Concat(Directory.EnumerateFiles(bin, "SQLitePCL*.dll"))
            .DistinctBy(Path.GetFileName).Select(p => MetadataReference.CreateFromFile(p));
        var all = trees.Values.Append(CSharpSyntaxTree.ParseText(Switch)).Append(CSharpSyntaxTree.ParseText(Usings));
        var errors = CSharpCompilation.Create(project, all, references, options).GetDiagnostics().Where(d => d.Severity == DiagnosticSeverity.Error && d.Id is not "CS8795").ToList();
        var bad = new HashSet<int>();
        foreach (var error in errors)
        {
            if (error.Location.SourceTree is not { } tree) throw new InvalidOperationException(error.ToString());
            var node = tree.GetRoot().FindNode(error.Location.SourceSpan, getInnermostNodeForTie: true);
            var name = error.Id is "CS0165" or "CS0170" or "CS0177" ? tree.GetText().ToString(error.Location.SourceSpan) : null;
            var member = (SyntaxNode?)node.FirstAncestorOrSelf<MemberDeclarationSyntax>() ?? tree.GetRoot();
            // A name that may be unassigned now: by the mutants around its declaration. Anything else: by the innermost around the error.
            var found = name is null || error.Id == "CS0177" ? Around(node) is { } one ? [one] : Within(member, null) : Within(member, name) is { Count: > 0 } some ? some : Within(member, null);
            if (found.Count == 0) throw new InvalidOperationException(error.ToString());
            bad.UnionWith(found);
        }
        Console.Error.WriteLine($"{project}: {mutants.Count} mutants, {errors.Count} errors of the compiler, {bad.Count} of them left out");
        return bad;
    }

    private static int? Around(SyntaxNode node) =>
        node.AncestorsAndSelf().SelectMany(n => n.GetAnnotations(MutantWriter.Mark)).Select(a => (int?)int.Parse(a.Data!)).FirstOrDefault();

    private static List<int> Within(SyntaxNode member, string? name) =>
        [.. member.GetAnnotatedNodes(MutantWriter.Mark).Where(n => name is null || n.DescendantNodes().Any(d => (d is SingleVariableDesignationSyntax v && v.Identifier.Text == name) || (d is DeclarationExpressionSyntax x && x.Designation.ToString() == name) || (d is AssignmentExpressionSyntax s && s.Left.ToString() == name) || (d is ArgumentSyntax a && a.RefKindKeyword.IsKind(SyntaxKind.OutKeyword) && a.Expression.ToString() == name)))
            .SelectMany(n => n.GetAnnotations(MutantWriter.Mark)).Select(a => int.Parse(a.Data!)).Distinct()];

    private static string Run(string program, string[] words)
    {
        using var process = Process.Start(new ProcessStartInfo(program, words) { RedirectStandardOutput = true })!;
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return process.ExitCode == 0 ? output : throw new InvalidOperationException($"{program} {string.Join(' ', words)} failed:\n{output}");
    }
}
