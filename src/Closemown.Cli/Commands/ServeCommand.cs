namespace Closemown.Cli;

/// <summary>Starts the pages and the web interface over the book.</summary>
internal sealed class ServeCommand : CliCommand
{
    public ServeCommand() : base("serve", "the pages, and the same for programs, at an address of this machine; with --lan for your own devices too")
    {
        Examples =
        [
            ("closemown serve --open", "on this machine alone, and open a browser"),
            ("closemown serve --lan", "a phone in the shed too: https, a code to pair it"),
            ("closemown demo --serve", "over an invented book"),
        ];
        Details =
        [
            "Without --lan nothing outside this machine can reach it. With --lan a device must be paired with the code that is printed (closemown devices lists and revokes them), and first trust this machine; docs/serve.md leads through it.",
            "Ctrl-C ends it.",
        ];
        ServeOrder.AddTo(this);
    }

    public override int Do(Call call) => ServeOrder.Of(call, call.Location.Path).Start(call);
}
