using System.Reflection;

namespace Closemown.Bench.Mutating;

/// <summary>One case of a test, run in this process without its runner.</summary>
internal sealed class InnerTest(MethodInfo method, object?[] arguments)
{
    /// <summary>Its name.</summary>
    public string Name => $"{method.DeclaringType!.Name}.{method.Name}";

    /// <summary>All cases of the namespaces; tests whose class needs more than a place for output are not among them.</summary>
    public static IEnumerable<InnerTest> In(Assembly tests, IReadOnlyList<string> namespaces)
    {
        foreach (var type in tests.GetTypes().Where(t => t.IsClass && !t.IsAbstract && !t.IsGenericType && namespaces.Any(n => t.Namespace == n || t.Namespace?.StartsWith(n + ".", StringComparison.Ordinal) == true)))
        {
            if (type.GetConstructors() is not [var made] || made.GetParameters().Any(p => p.ParameterType.Name != "ITestOutputHelper")) continue;
            foreach (var method in type.GetMethods(BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static).Where(m => !m.IsGenericMethod))
            {
                var marks = method.GetCustomAttributes().ToList();
                if (marks.Exists(m => m.GetType().Name == "FactAttribute")) yield return new(method, []);
                if (!marks.Exists(m => m.GetType().Name == "TheoryAttribute")) continue;
                foreach (var data in marks.Where(m => m.GetType().GetMethod("GetData") is not null))
                {
                    foreach (var row in Rows(data, method)) yield return new(method, Fit(method, row));
                }
            }
        }
    }

    /// <summary>Runs it; throws what it throws. A test that is skipped passes.</summary>
    public void Run()
    {
        var instance = method.IsStatic ? null : method.DeclaringType!.GetConstructors()[0] is var made
            ? made.Invoke([.. made.GetParameters().Select(p => DispatchProxy.Create(p.ParameterType, typeof(Silent)))]) : null;
        try
        {
            if (method.Invoke(instance, arguments) is Task task) task.GetAwaiter().GetResult();
        }
        catch (Exception e) when ((e as TargetInvocationException)?.InnerException?.GetType().Name is "SkipException")
        {
            // Not for this machine.
        }
        finally
        {
            (instance as IDisposable)?.Dispose();
        }
    }

    private static IEnumerable<object?[]> Rows(Attribute data, MethodInfo method)
    {
        var get = data.GetType().GetMethod("GetData")!;
        var disposal = Activator.CreateInstance(get.GetParameters()[1].ParameterType);
        var waiting = get.Invoke(data, [method, disposal])!;                   // a ValueTask of rows
        var task = (Task)waiting.GetType().GetMethod("AsTask")!.Invoke(waiting, null)!;
        task.GetAwaiter().GetResult();
        foreach (var row in (System.Collections.IEnumerable)task.GetType().GetProperty("Result")!.GetValue(task)!)
        {
            yield return (object?[])row.GetType().GetInterfaces().First(i => i.Name == "ITheoryDataRow").GetMethod("GetData")!.Invoke(row, null)!;
        }
    }

    private static object?[] Fit(MethodInfo method, object?[] row)
    {
        var parameters = method.GetParameters();
        if (parameters.LastOrDefault()?.GetCustomAttribute<ParamArrayAttribute>() is not null && (row.Length != parameters.Length || row[^1]?.GetType().IsArray != true))
        {
            var fixedCount = parameters.Length - 1;
            var rest = Array.CreateInstance(parameters[^1].ParameterType.GetElementType()!, row.Length - fixedCount);
            for (var i = fixedCount; i < row.Length; i++) rest.SetValue(row[i], i - fixedCount);
            row = [.. row.Take(fixedCount), rest];
        }
        return [.. parameters.Select((p, i) => i >= row.Length ? Type.Missing
            : row[i] is IConvertible value && Nullable.GetUnderlyingType(p.ParameterType) is null && p.ParameterType.IsPrimitive && value.GetType() != p.ParameterType
                ? Convert.ChangeType(value, p.ParameterType, System.Globalization.CultureInfo.InvariantCulture) : row[i])];
    }

    /// <summary>Takes what a test has to say, and says nothing.</summary>
#pragma warning disable CA1852 // The proxy is made as a class derived from it.
    public class Silent : DispatchProxy
#pragma warning restore CA1852
    {
        protected override object? Invoke(MethodInfo? targetMethod, object?[]? args) => targetMethod?.ReturnType == typeof(string) ? "" : null;
    }
}
