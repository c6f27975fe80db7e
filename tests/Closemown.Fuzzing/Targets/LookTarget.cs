using System.Text;
using Closemown.Quantities;
using Closemown.Web;
using Microsoft.AspNetCore.Http;

namespace Closemown.Fuzzing;

/// <summary>The cookie with a visitor's choices.</summary>
internal sealed class LookTarget() : FuzzTarget("look")
{
    public override IReadOnlyList<byte[]> Seeds { get; } = Bytes(["closemown-look=words=uk&gap=thou&height=fraction&decimal=comma&theme=dark&stand=behind", "closemown-look=words%3Duk%26gap%3Dum; a=b", "x=y; closemown-look=\"words=us\""]);

    public override IReadOnlyList<byte[]> Words { get; } = Vocabulary.With(LookCookie.Choices.SelectMany(c => c.Value.Select(v => $"{c.Key}={v}")).Concat(["; ", "&", "=", "closemown-look=", "%3D", "\""]));

    public override void Run(byte[] input)
    {
        var http = new DefaultHttpContext();
        http.Request.Headers.Cookie = Encoding.UTF8.GetString(input);
        var look = LookCookie.Read(http.Request, WritingStyle.Plain);
        foreach (var (field, may) in LookCookie.Choices) Laws.Must(may.Contains(look.Of(field)), "a look is one of the choices", $"{field} {look.Of(field)}");
    }
}
