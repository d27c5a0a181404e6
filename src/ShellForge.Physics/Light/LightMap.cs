using System.Collections.Immutable;

namespace ShellForge.Physics.Light;

/// <summary>Light on and behind a diffuser. Flux is counted in LEDs: all shares are of the flux of all LEDs together.</summary>
public sealed record LightMap
{
    /// <summary>The cells.</summary>
    public required ReceiverGrid Face { get; init; }

    /// <summary>On the diffuser's inner face, direct and reflected.</summary>
    public required LightFields Irradiance { get; init; }

    /// <summary>Leaving on the viewer's side, spread and weakened by the sheet.</summary>
    public required LightFields Seen { get; init; }

    /// <summary>The sheet.</summary>
    public required DiffuserOptics Diffuser { get; init; }

    /// <summary>What is reflected, to be read off at other places.</summary>
    internal ReflectedLight Reflected { get; init; } = null!;

    /// <summary>Share of the LEDs' light that reaches the lit window straight.</summary>
    public required double DirectShare { get; init; }

    /// <summary>For each LED the share of its own light that reaches the lit window straight.</summary>
    public required ImmutableArray<double> DirectOf { get; init; }

    /// <summary>Light that reaches it by way of other surfaces, each time it comes counted, as a share of the LEDs' light.</summary>
    public required double ReflectedShare { get; init; }

    /// <summary>Share that the viewer's side gives off.</summary>
    public required double SeenShare { get; init; }

    /// <summary>Largest mean light of one LED on another's share of the window, over that on its own.</summary>
    public required double Crosstalk { get; init; }
}
