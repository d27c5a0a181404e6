namespace ShellForge.Testing;

/// <summary>A board whose every free text would do harm where it is taken for something else than text.</summary>
public static class HostileBoard
{
    /// <summary>Name of the housing: ends comments, attributes and scripts, and begins a formula.</summary>
    public const string Name = "=1+1*/'\"--></script><img src=x onerror=hurt=1>&lt;]]>";

    /// <summary>Designator of a part.</summary>
    public const string Part = "<svg/onload=hurt=2>";

    /// <summary>Name of a lead.</summary>
    public const string Wire = "'\"><script>hurt=3</script>";

    /// <summary>A reason.</summary>
    public const string Reason = "${hurt=4} {{hurt=4}} [x](javascript:hurt=4) <iframe srcdoc='<script>parent.hurt=4</script>'>";

    /// <summary>The board file.</summary>
    public static string Text { get; } = $$"""
        format: shellforge/1
        name: {{Quoted(Name)}}
        revision: {{Quoted("</text><b>&\\(*/")}}
        board:
          outline: {disc: 40}
          thickness: 1.6
          holes: [{circle: 33, count: 2, diameter: 2.2}]
          pixels: {package: "5050", circle: 20, count: 4, from: 90, ref: {{Quoted("D<u>1")}}}
          parts:
            - {ref: {{Quoted(Part)}}, size: [3, 3, 2], side: bottom, at: [0, 0]}
          wires:
            - {name: {{Quoted(Wire)}}, at: [0, -8], gauge: 26}
        housing:
          insert: m2x3-od3.6
          cable: {round: 3.5, angle: 270}
          closure: snap
          label: {text: {{Quoted("<b>&'\"")}}}
        accept:
          - {rule: snap-overstrained, why: {{Quoted(Reason)}}}
        """;

    private static string Quoted(string text) =>
        '"' + text.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal) + '"';
}
