using System.Text;
using Closemown.Quantities;

namespace Closemown.Fuzzing;

/// <summary>Quantities: every reader, with point and with comma.</summary>
internal sealed class QuantityTarget() : FuzzTarget("quantity")
{
    private static readonly WritingStyle[] Styles = [WritingStyle.Plain, new() { DecimalSign = ',', Height = HeightUnit.InchFraction, Gap = GapUnit.Thou, Words = Wording.UK }];

    public override IReadOnlyList<byte[]> Seeds { get; } = Bytes(
        ["5/32 in", "4 mm", "1 1/4 in", "0.156\"", "25 µm", "2 thou", "1 h 20 min", "1:20", "120 m2", "1,5 kg/m2", "80 gsm", "5 %", "3000 rpm", "4.8 km/h", "68F", "20 °C", "half a turn", "90 deg", "12 l", "2 clicks in", "1 click out", "-0.5", "1e3", "½ in", "6 flats"]);

    public override IReadOnlyList<byte[]> Words { get; } = Vocabulary.With(QuantityReaders.Units.SelectMany(u => (string[])[u, " " + u]));

    public override int Longest => 1100;

    public override void Run(byte[] input)
    {
        var text = Encoding.UTF8.GetString(input);
        foreach (var style in Styles)
        {
            foreach (var read in QuantityReaders.All) read(text, style);
        }
    }
}
