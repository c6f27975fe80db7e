using System.Text;
using Closemown.Entries;
using Closemown.Pipe;
using Closemown.Quantities;
using Closemown.Web;
using Microsoft.AspNetCore.Http;
using FormPipeReader = Microsoft.AspNetCore.WebUtilities.FormPipeReader;

namespace Closemown.Fuzzing;

/// <summary>The body of a form, from its bytes to an entry or to the form as it is given back.</summary>
internal sealed class FormTarget() : FuzzTarget("form")
{
    private static readonly DateTimeOffset Now = new(2026, 5, 1, 8, 0, 0, TimeSpan.Zero);

    private static readonly string[] Forms =
    [
        "kind=clicks&left=1&right=-0.5&unit=mower&back=/steel", "kind=gauge&leftMm=5.1&leftMm.in=mm&rightMm=5/32&rightMm.in=in&confirm=leftMm", "kind=feeler&left.goUm=30&left.noGoUm=50&centre=..40", "kind=canopy&mm=5&mm=5.5&mm=6&when=after&how=ruler",
        "kind=wish&area=green&cutMm=4&cutMm.in=mm&weekdays=tue&weekdays=fri&fixtures=2026-05-09&byDate=1+June", "kind=soil-test&P=20&K=60+ppm", "kind=mow&hours=20+min&by=a&note=b%0Ac&id=019de28d-3c00-7000-8000-00000000ffff&at=2026-05-01T08:00:00Z",
        "kind=unit&unit=mower&relief=on&grits=80;120&priors=clickUm+18%C2%B11&instead=clickUm=19&clickUm=0.019", "kind=look&scalpPct=5+%25&frost=on", "kind=strip&um=80&instead=um=80&confirm=um&voids=019de28d-3c00-7000-8000-00000000fffe",
    ];

    public override IReadOnlyList<byte[]> Seeds { get; } = Bytes(Forms);

    public override IReadOnlyList<byte[]> Words { get; } = Vocabulary.With(Forms.SelectMany(f => f.Split('&')).SelectMany(p => (string[])["&" + p, p.Split('=')[0]]).Concat(["%", "%00", "%ff", "%C3", "%u0041", "=", "&", "+", ".in", ".goUm"]));

    public override void Run(byte[] input)
    {
        var body = Body(input);
        if (body is null) return;
        var form = new EnteredForm(body);
        var style = new WritingStyle { DecimalSign = form["decimal"] == "comma" ? ',' : '.' };
        var json = new FormReader(form, style, DateOnly.FromDateTime(Now.DateTime)).Read(out var found);
        Laws.Must(found.Count > 0 == json is null, "a form has faults or is an entry", Encoding.UTF8.GetString(input));
        foreach (var fault in found) Laws.Told(fault.Fault.Message, fault.Fault.Remedy);
        Mended(form, found);
        if (json is null) return;
        var context = new EntryContext { NewId = new Book.SequentialIds().Next, Now = () => Now, OnlyUnit = () => "mower", OnlyArea = () => "green" };
        var faults = EntryReader.Read(Conversation.Text(json), context, out var entry);
        Laws.Faults(faults, entry);
        if (entry is not null) Laws.ReadBack(entry);
        else Mended(form, [.. faults.Select(f => new FormFault(f with { Field = FormReader.InForm(form, f.Field) }, []))]);
    }

    /// <summary>As the server reads a body, by the framework; null where it refuses it.</summary>
    private static FormCollection? Body(byte[] input)
    {
        try
        {
            var pairs = new FormPipeReader(System.IO.Pipelines.PipeReader.Create(new System.Buffers.ReadOnlySequence<byte>(input))).ReadFormAsync().GetAwaiter().GetResult();
            return new(pairs);
        }
        catch (InvalidDataException)
        {
            return null;
        }
    }

    /// <summary>A form that is not taken comes back with everything that was typed.</summary>
    private static void Mended(EnteredForm form, IReadOnlyList<FormFault> faults)
    {
        var mended = Mending.Of(form, faults);
        Laws.Must(mended.Faults.Count == faults.Count, "a form to mend tells every fault", mended.Kind);
        Laws.Must(mended.Fields.All(f => f.Label.Length > 0), "a field to mend has a label", mended.Kind);
    }
}
