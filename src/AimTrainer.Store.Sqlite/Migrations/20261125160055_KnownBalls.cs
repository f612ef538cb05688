using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace AimTrainer.Store.Sqlite
{
    /// <inheritdoc />
    public partial class KnownBalls : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<double>(
                name: "differential_inches",
                table: "balls",
                type: "REAL",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "games_since_surface_work",
                table: "balls",
                type: "INTEGER",
                nullable: true);

            migrationBuilder.AddColumn<double>(
                name: "gyration_inches",
                table: "balls",
                type: "REAL",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "layout",
                table: "balls",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "surface",
                table: "balls",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<double>(
                name: "weight_pounds",
                table: "balls",
                type: "REAL",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "ball_surfaces",
                columns: table => new
                {
                    id = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    ball_id = table.Column<long>(type: "INTEGER", nullable: false),
                    at = table.Column<DateTime>(type: "TEXT", nullable: false),
                    kind = table.Column<string>(type: "TEXT", nullable: false),
                    finish = table.Column<string>(type: "TEXT", nullable: true),
                    roughness = table.Column<double>(type: "REAL", nullable: true),
                    roughness_unit = table.Column<string>(type: "TEXT", nullable: true),
                    games = table.Column<int>(type: "INTEGER", nullable: true),
                    note = table.Column<string>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ball_surfaces", x => x.id);
                    table.ForeignKey(
                        name: "FK_ball_surfaces_balls_ball_id",
                        column: x => x.ball_id,
                        principalTable: "balls",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "IX_ball_surfaces_ball_id_at",
                table: "ball_surfaces",
                columns: new[] { "ball_id", "at" });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "ball_surfaces");

            migrationBuilder.DropColumn(
                name: "differential_inches",
                table: "balls");

            migrationBuilder.DropColumn(
                name: "games_since_surface_work",
                table: "balls");

            migrationBuilder.DropColumn(
                name: "gyration_inches",
                table: "balls");

            migrationBuilder.DropColumn(
                name: "layout",
                table: "balls");

            migrationBuilder.DropColumn(
                name: "surface",
                table: "balls");

            migrationBuilder.DropColumn(
                name: "weight_pounds",
                table: "balls");
        }
    }
}
