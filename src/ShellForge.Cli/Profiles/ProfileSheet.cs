using System.Collections.Immutable;

namespace ShellForge.Cli.Profiles;

/// <summary>A profile as a table: every value under the key that a profile file uses, with its source.</summary>
/// <param name="Kind">Shelf, as in profile files: <c>inserts</c>.</param>
/// <param name="Name">Name of the profile.</param>
/// <param name="Lines">Its values.</param>
internal sealed record ProfileSheet(string Kind, string Name, ImmutableArray<ProfileLine> Lines);

/// <summary>A value of a profile.</summary>
/// <param name="What">Its key.</param>
/// <param name="Value">The value as text, with its unit.</param>
/// <param name="Source">Where it comes from; empty where nothing needs a source.</param>
internal sealed record ProfileLine(string What, string Value, string Source);
